import { DEBT_WORDS, stepsOf } from '#libs/checklist';
import type { DocumentForm, InvoiceDraft, InvoiceParty, InvoiceRules, JobOnDocument, PaymentMeans } from '#libs/invoicing';
import type { Workshop } from '../../platform/workshop-facts.ts';
import type { Draft } from './draft-of.ts';
import { isoDay } from '../../web/dates.ts';
import { temperatureText } from '../../web/figures.ts';
import { workWords } from './job-work.ts';
import type { BillFacts } from './job-bill.repository.ts';

const DAY_MS = 86_400_000;
const addDays = (day: string, days: number): string => new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

function seller(workshop: Workshop): InvoiceParty {
  return {
    name: workshop.name,
    address: { lines: workshop.addressLines, postcode: workshop.postcode, city: workshop.city, countryCode: workshop.country },
    vatId: workshop.vatId === '' ? undefined : workshop.vatId,
    ...(workshop.companyNumber === '' ? {} : { legalRegistration: { id: workshop.companyNumber } }),
    contact: { phone: workshop.phone, email: workshop.email },
  };
}

function buyer({ customer }: Pick<BillFacts, 'customer'>, workshop: Workshop): InvoiceParty {
  return {
    name: customer.name,
    address: {
      lines: customer.addressLines,
      postcode: customer.postcode,
      city: customer.city,
      countryCode: customer.country || workshop.country,
    },
    vatId: customer.vatId === '' ? undefined : customer.vatId,
  };
}

function means({ payTo, name }: Workshop): PaymentMeans[] {
  if (payTo === '') return [{ method: 'card', words: 'Card or cash at the counter' }];
  return [{ method: 'credit-transfer', words: 'Bank transfer', account: { iban: payTo.replaceAll(' ', ''), name } }];
}

const PROOFS: readonly string[] = ['level-check', 'after-log'];

/** The job and its car, as every document of the job names them. */
export function carOnDocument({ job, vehicle }: Pick<BillFacts, 'job' | 'vehicle'>): Pick<JobOnDocument, 'jobNumber' | 'vehicle'> {
  return {
    jobNumber: String(job.number),
    vehicle: {
      registration: vehicle.registration,
      makeAndModel: vehicle.makeAndModel,
      ...(vehicle.vin === null ? {} : { vin: vehicle.vin }),
      ...(job.odometerKm === null ? {} : { odometer: { value: String(job.odometerKm), unit: 'km' as const } }),
    },
  };
}

/** What the page says about the work, as it is known now. */
function jobOnDocument(draft: Draft, issuedOn: string): JobOnDocument {
  const { facts, card, workshop } = draft;
  const { numbers, choices } = card.facts;
  const litres = (name: string): string | undefined => (numbers[name] === undefined ? undefined : `${numbers[name].value.toFixed(2)} L`);
  const drained = litres('drainedL');
  const found = [
    ...(drained === undefined
      ? []
      : [
          `Coolant drained: ${drained}; put in: ${card.facts.filledL.toFixed(2)} L, of which new product ${card.facts.filledProductL.toFixed(2)} L.`,
        ]),
    ...(numbers['strengthFreezingC'] === undefined
      ? []
      : [`Mixed coolant read after the run: protects to ${temperatureText(numbers['strengthFreezingC'].value)}.`]),
    ...(choices['diagnosis'] === undefined ? [] : [`Found: ${optionWords(card, 'diagnosis', choices['diagnosis'].choice)}.`]),
  ];
  const isProven = card.holds.proof?.state === 'passed';
  const owed = card.template.phases
    .flatMap((phase) => phase.steps)
    .filter((step) => step.debt && PROOFS.includes(step.debt.kind) && card.steps[step.key]?.state === 'open');
  const [proof] = owed;
  const by = facts.openDebts
    .find(({ kind }) => kind === proof?.debt?.kind)
    ?.dueOn?.toISOString()
    .slice(0, 10);
  const proofOwed =
    proof?.debt && isProven
      ? {
          what: owed.map((step) => DEBT_WORDS[step.debt?.kind ?? 'after-log']).join(', '),
          by: by ?? addDays(issuedOn, proof.debt.dueDays),
        }
      : undefined;
  return {
    ...carOnDocument(facts),
    workDone: [`${workWords(card)}.`],
    found: isProven ? [...found, 'Run hot: both heater hoses hot, radiator side from cold to hot, no leak.'] : found,
    advice: [...card.findings.map(({ words, severity }) => `${FINDING_WORDS[severity]}: ${words}`), ...linesOf(facts.paper.advice)],
    nextDue: nextCoolant(draft, issuedOn),
    ...(proofOwed ? { proofOwed } : {}),
    ...(workshop.guaranteeWords === '' ? {} : { guarantee: workshop.guaranteeWords }),
  };
}

const FINDING_WORDS = { now: 'Now', soon: 'Soon', watch: 'To watch' } as const;

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** When the coolant is due again, by the label of what was poured: after so many years or kilometres. */
function nextCoolant({ facts, card }: Draft, issuedOn: string): JobOnDocument['nextDue'] {
  const { coolant, job } = facts;
  if (coolant === null || card.facts.filledProductL === 0) return [];
  const { serviceYears, serviceKm } = coolant;
  if (serviceYears === null && serviceKm === null) return [];
  const date =
    serviceYears === null ? undefined : `${Number(issuedOn.slice(0, 4)) + serviceYears}${issuedOn.slice(4)}`.replace('-02-29', '-02-28');
  const odometer = serviceKm === null || job.odometerKm === null ? undefined : `${job.odometerKm + serviceKm} km`;
  return [{ what: 'Coolant change', ...(date === undefined ? {} : { date }), ...(odometer === undefined ? {} : { odometer }) }];
}

function optionWords(card: Draft['card'], fact: string, choice: string): string {
  for (const { evidence } of stepsOf(card.template)) {
    if (evidence.kind === 'choice' && evidence.fact === fact) return evidence.options.find(({ key }) => key === choice)?.words ?? choice;
  }
  return choice;
}

/** The document as it would be issued on that day, still without its number. */
export function invoiceDraft(draft: Draft, today: string, form: DocumentForm = 'full'): InvoiceDraft {
  const { facts, workshop, deduction } = draft;
  const { orderReference, buyerReference } = facts.paper;
  return {
    kind: 'invoice',
    form,
    number: null,
    issueDate: null,
    ...paperOf(workshop, facts),
    supplyDate: facts.job.keysOutAt ? isoDay(facts.job.keysOutAt, workshop.timeZone) : today,
    dueDate: addDays(today, workshop.payWithinDays),
    paymentTerms: workshop.payWithinDays === 0 ? 'Payable at once' : `Payable within ${workshop.payWithinDays} days`,
    paymentMeans: means(workshop),
    ...(orderReference === '' ? {} : { orderReference }),
    ...(buyerReference === '' ? {} : { buyerReference }),
    preceding: deduction.preceding,
    lines: [...draft.lines.map(({ origin, changedWhy, ...line }) => line), ...deduction.lines],
    allowances: draft.allowances,
    charges: draft.charges,
    prepayments: deduction.prepayments,
    rounding: deduction.rounding,
    job: jobOnDocument(draft, today),
  };
}

/** Who sells to whom, in what currency, under which tax: the same on every document of the workshop. */
export function paperOf(
  workshop: Workshop,
  facts: Pick<BillFacts, 'customer'>,
): Pick<InvoiceDraft, 'currency' | 'language' | 'seller' | 'buyer' | 'exemptions' | 'legalMarks' | 'notes'> {
  const { exemptionWords, vatCategory } = workshop;
  const isGroundGiven = exemptionWords !== '' && (vatCategory === 'E' || vatCategory === 'O');
  return {
    currency: workshop.currency,
    language: 'en-GB',
    seller: seller(workshop),
    buyer: buyer(facts, workshop),
    exemptions: isGroundGiven ? [{ category: vatCategory, text: exemptionWords }] : [],
    legalMarks: workshop.cashAccounting ? ['cash-accounting'] : [],
    notes: [],
  };
}

/** What the workshop's country asks of a document. */
export function rulesOf({ simplifiedLimit, cashAccounting }: Workshop): InvoiceRules {
  return { simplifiedLimit, accountingCurrency: null, cashAccounting };
}
