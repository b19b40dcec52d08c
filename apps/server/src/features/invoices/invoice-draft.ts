import { DEBT_WORDS, stepsOf } from '#libs/checklist';
import type { InvoiceDraft, InvoiceParty, JobOnDocument, PaymentMeans } from '#libs/invoicing';
import type { Workshop } from '../../platform/workshop-facts.ts';
import type { Draft } from './drafts.service.ts';
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
    contact: { phone: workshop.phone, email: workshop.email },
  };
}

function buyer({ customer }: BillFacts, workshop: Workshop): InvoiceParty {
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

/** What the page says about the work, as it is known now. */
function jobOnDocument({ facts, card, workshop }: Draft, issuedOn: string): JobOnDocument {
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
    jobNumber: String(facts.job.number),
    vehicle: {
      registration: facts.vehicle.registration,
      makeAndModel: facts.vehicle.makeAndModel,
      ...(facts.vehicle.vin === null ? {} : { vin: facts.vehicle.vin }),
      ...(facts.job.odometerKm === null ? {} : { odometer: { value: String(facts.job.odometerKm), unit: 'km' as const } }),
    },
    workDone: [`${workWords(card)}.`],
    found: isProven ? [...found, 'Run hot: both heater hoses hot, radiator side from cold to hot, no leak.'] : found,
    advice: [],
    nextDue: [],
    ...(proofOwed ? { proofOwed } : {}),
    ...(workshop.guaranteeWords === '' ? {} : { guarantee: workshop.guaranteeWords }),
  };
}

function optionWords(card: Draft['card'], fact: string, choice: string): string {
  for (const { evidence } of stepsOf(card.template)) {
    if (evidence.kind === 'choice' && evidence.fact === fact) return evidence.options.find(({ key }) => key === choice)?.words ?? choice;
  }
  return choice;
}

/** The document as it would be issued on that day, still without its number. */
export function invoiceDraft(draft: Draft, today: string): InvoiceDraft {
  const { facts, workshop } = draft;
  return {
    kind: 'invoice',
    form: 'full',
    number: null,
    issueDate: null,
    currency: workshop.currency,
    language: 'en-GB',
    seller: seller(workshop),
    buyer: buyer(facts, workshop),
    supplyDate: facts.job.keysOutAt ? isoDay(facts.job.keysOutAt, workshop.timeZone) : today,
    dueDate: addDays(today, workshop.payWithinDays),
    paymentTerms: workshop.payWithinDays === 0 ? 'Payable at once' : `Payable within ${workshop.payWithinDays} days`,
    paymentMeans: means(workshop),
    preceding: [],
    lines: draft.lines.map(({ origin, changedWhy, ...line }) => line),
    allowances: [],
    charges: [],
    prepayments: [],
    exemptions: [],
    legalMarks: [],
    notes: [],
    job: jobOnDocument(draft, today),
  };
}
