import { units, vatCategories } from '#libs/invoicing';
import { Decimal } from '#libs/money';
import { EMPTY_FORM, type FormState } from '../../platform/pages/form-state.ts';
import { isoDay, plainDate } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { amountText, moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { EditedLine } from './draft-edits.ts';
import type { Draft } from './draft-of.ts';
import { labourHours, workshopTax } from './job-work.ts';
import { METHOD_OPTIONS, METHOD_WORDS } from './money/method-words.ts';
import { withoutZeros } from './print.presenter.ts';

/** Which form of the draft's page is open: a line by its origin, a new line, or one of the others. */
type DraftForm = 'line' | 'adjust' | 'words' | 'deposit' | 'deposit-back';

interface OpenForm {
  name: DraftForm;
  action: string;
  legend: string;
  words: string;
  button: string;
  isLine: boolean;
  /** Of the line that is changed; empty: a new one. */
  origin: string;
  fields: FieldView[];
}

export interface DraftView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  lines: { what: string; quantity: string; price: string; vat: string; net: string; off: string; changedWhy: string; editHref: string }[];
  adjustments: { what: string; amount: string; takeBack: string }[];
  net: string;
  vat: { words: string; tax: string }[];
  prepaid: string;
  payable: string;
  currency: string;
  ceiling: string;
  held: { name: string; words: string }[];
  notBilled: { what: string; why: string }[];
  notes: string[];
  advice: string[];
  moneyAhead: { words: string; href: string | undefined }[];
  obstacles: string[];
  canIssue: boolean;
  simplified: { limit: string } | undefined;
  issued: { href: string; number: string } | undefined;
  open: OpenForm | undefined;
  add: { line: string; adjust: string; words: string; deposit: string; depositBack: string | undefined };
  issueAction: string;
  errors: FormState['summary'];
}

export interface DraftPage {
  forms: Partial<Record<DraftForm, FormState>>;
  obstacles: string[];
  simplifiedObstacles: string[];
  editing: string | undefined;
  now: Date;
}

const unitShort = (code: string): string => units.find((unit) => unit.code === code)?.short ?? code;
const UNIT_OPTIONS = units.map(({ code, short, words }) => ({ value: code, label: short === '' ? words : `${words} (${short})` }));
const TAX_WORDS: Readonly<Record<string, string>> = {
  S: 'Taxed at the rate',
  Z: 'Zero rate',
  E: 'Exempt',
  AE: 'The customer owes the tax',
  K: 'Supply to another EU country',
  G: 'Export',
  O: 'Outside the scope of tax',
};
const TAX_OPTIONS = Object.keys(vatCategories).map((value) => ({ value, label: TAX_WORDS[value] ?? value }));

function lineForm(form: FormState, draft: Draft, line: EditedLine | undefined): OpenForm {
  const { workshop, facts } = draft;
  const tax = line ?? workshopTax(workshop);
  const money = { unit: workshop.currency, inputmode: 'decimal', short: true } as const;
  const [discount] = line?.allowances ?? [];
  return {
    name: 'line',
    action: urls.editLine(facts.job.id),
    isLine: true,
    origin: line?.origin ?? '',
    legend: line ? `Change “${line.name}”` : 'Add a line',
    words: '',
    button: 'Change the draft',
    fields: Object.values(
      formFields(form, [
        { name: 'description', label: 'What', value: line?.name ?? '', required: true, maxlength: 200 },
        {
          name: 'quantity',
          label: 'Quantity',
          value: line?.quantity ?? '1',
          ...(line ? { unit: unitShort(line.unit) } : {}),
          inputmode: 'decimal',
          required: true,
          short: true,
        },
        ...(line ? [] : [{ name: 'unit', label: 'Unit', value: 'H87', options: UNIT_OPTIONS }]),
        { name: 'unitPrice', label: 'Price before tax', value: line?.unitPrice ?? '', required: true, ...money },
        { name: 'vatCategory', label: 'Tax', value: tax.vatCategory, options: TAX_OPTIONS },
        { name: 'vatRate', label: 'Rate', value: tax.vatRate ?? '0', unit: '%', inputmode: 'decimal', short: true, required: true },
        { name: 'discount', label: 'Discount on the line, before tax', value: discount?.amount ?? '', optional: true, ...money },
        { name: 'discountFor', label: 'Discount for', value: discount?.reason ?? '', optional: true, maxlength: 100 },
        { name: 'why', label: 'Why', required: true, maxlength: 300, hint: 'Kept with the job; the owner sees it.' },
      ]),
    ),
  };
}

function adjustForm(form: FormState, { totals, facts, workshop }: Draft): OpenForm {
  const rates = totals.vat.map(({ rate }) => ({ value: rate ?? '0', label: rate === null ? 'No tax' : `${rate} %` }));
  return {
    name: 'adjust',
    action: urls.adjustDraft(facts.job.id),
    isLine: false,
    origin: '',
    legend: 'Take off or put on the whole invoice',
    words: '',
    button: 'Change the draft',
    fields: Object.values(
      formFields(form, [
        {
          name: 'kind',
          label: 'Which way',
          value: 'allowance',
          options: [
            { value: 'allowance', label: 'Take off' },
            { value: 'charge', label: 'Put on' },
          ],
        },
        { name: 'amount', label: 'Amount before tax', unit: workshop.currency, inputmode: 'decimal', short: true, required: true },
        { name: 'vatRate', label: 'Of the lines at', value: rates[0]?.value ?? '0', options: rates },
        { name: 'reason', label: 'What for', required: true, maxlength: 100, hint: 'Stands on the invoice.' },
      ]),
    ),
  };
}

function wordsForm(form: FormState, { facts }: Draft): OpenForm {
  const { advice, orderReference, buyerReference } = facts.paper;
  return {
    name: 'words',
    action: urls.draftWords(facts.job.id),
    isLine: false,
    origin: '',
    legend: 'Advice and the customer’s references',
    words: '',
    button: 'Keep these words',
    fields: Object.values(
      formFields(form, [
        { name: 'advice', label: 'Advice, one piece to a line', value: advice, lines: 4, maxlength: 1_000, optional: true },
        { name: 'orderReference', label: 'Customer’s order number', value: orderReference, maxlength: 60, optional: true },
        { name: 'buyerReference', label: 'Customer’s reference', value: buyerReference, maxlength: 60, optional: true },
      ]),
    ),
  };
}

function depositForm(form: FormState, { facts, workshop }: Draft, { now, isBack }: { now: Date; isBack: boolean }): OpenForm {
  const hasDocument = workshop.depositForm === 'tax-document';
  return {
    name: isBack ? 'deposit-back' : 'deposit',
    action: isBack ? urls.depositBack(facts.job.id) : urls.deposit(facts.job.id),
    isLine: false,
    origin: '',
    legend: isBack ? 'Give money on account back' : 'Take money before the work',
    words: isBack || !hasDocument ? '' : 'It gets a numbered tax invoice of its own; the final invoice takes it off, with its tax.',
    button: isBack ? 'Book it' : hasDocument ? 'Book it and issue its invoice' : 'Book it',
    fields: Object.values(
      formFields(form, [
        { name: 'amount', label: 'Amount, tax in it', unit: workshop.currency, inputmode: 'decimal', short: true, required: true },
        { name: 'method', label: 'How', value: 'card', options: METHOD_OPTIONS },
        {
          name: 'reference',
          label: 'Reference',
          optional: true,
          maxlength: 60,
          hint: 'The slip’s or the transfer’s; never a card number.',
        },
        { name: 'paidOn', label: 'Day', type: 'date', value: isoDay(now, workshop.timeZone), required: true },
        ...(isBack ? [{ name: 'why', label: 'Why', required: true, maxlength: 200 }] : []),
      ]),
    ),
  };
}

function openForm(draft: Draft, { forms, editing, now }: DraftPage): OpenForm | undefined {
  const state = (name: DraftForm): FormState => forms[name] ?? EMPTY_FORM;
  switch (editing) {
    case undefined:
      return undefined;
    case 'adjust':
      return draft.totals.vat.length === 0 ? undefined : adjustForm(state('adjust'), draft);
    case 'words':
      return wordsForm(state('words'), draft);
    case 'deposit':
    case 'deposit-back':
      return depositForm(state(editing), draft, { now, isBack: editing === 'deposit-back' });
    case 'new':
      return lineForm(state('line'), draft, undefined);
    default: {
      const line = draft.lines.find(({ origin }) => origin === editing);
      return line && lineForm(state('line'), draft, line);
    }
  }
}

function moneyAhead({ facts, workshop }: Draft): DraftView['moneyAhead'] {
  return [
    ...facts.deposits.map(({ id, number, document }) => ({
      words: `Deposit ${number}, ${moneyText(document.totals.payable, workshop.currency)}`,
      href: urls.invoice(id),
    })),
    ...facts.onAccount.map(({ amount, method, paidOn }) => ({
      words: `${Number(amount) < 0 ? 'Given back' : 'On account'} ${plainDate(paidOn)}: ${moneyText(amount, workshop.currency)}, ${METHOD_WORDS[method] ?? method}`,
      href: undefined,
    })),
  ];
}

/** Lines of the work, then those that take deposits off; the latter are nobody's to change. */
function lineRows({ lines, deduction, due, facts }: Draft): DraftView['lines'] {
  const edited = new Map(lines.map((line) => [line.id, line]));
  return [...lines, ...deduction.lines].map((line, index) => {
    const own = edited.get(line.id);
    return {
      what: [line.name, line.itemNumber].filter((part) => part !== undefined).join(', '),
      quantity: `${withoutZeros(line.quantity)} ${unitShort(line.unit)}`.trim(),
      price: line.unitPrice,
      vat: line.vatRate === null ? '–' : `${line.vatRate} %`,
      net: amountText(due.lines[index]?.net ?? '0'),
      off: (line.allowances ?? []).map(({ amount, reason }) => `Less ${amountText(amount)}, ${reason}`).join('; '),
      changedWhy: own?.changedWhy ?? '',
      editHref: own ? `${urls.draft(facts.job.id)}?edit=${encodeURIComponent(own.origin)}#form` : '',
    };
  });
}

export function presentDraft(draft: Draft, page: DraftPage): DraftView {
  const { facts, workshop, totals, due, drafted, lines } = draft;
  const { hours, isRecorded } = labourHours(draft.card);
  const { standing, job } = facts;
  const overCeiling = facts.ceilingGross !== null && new Decimal(totals.taxInclusive).gt(facts.ceilingGross);
  const labourWords = isRecorded
    ? `Labour: ${hours} h by the card’s clock`
    : `Labour: ${hours} h as planned; nobody ran the clock on the card`;
  const canSimplify =
    workshop.simplifiedLimit !== null &&
    page.simplifiedObstacles.length === 0 &&
    new Decimal(totals.taxInclusive).lte(workshop.simplifiedLimit);
  return {
    title: `Draft, job ${job.number}`,
    head: {
      title: 'Draft',
      lead: `Job ${job.number}, ${facts.vehicle.makeAndModel}, ${facts.customer.name}.`,
      rest: standing ? '' : 'Computed from the job each time it is opened; your changes lie over it.',
      actions: [{ href: urls.job(job.id), label: 'To the job' }],
    },
    lines: lineRows(draft),
    adjustments: facts.adjustments.map(({ id, kind, amount, reason, vatRatePct }) => ({
      what: `${reason}, on the lines at ${vatRatePct} %`,
      amount: `${kind === 'allowance' ? '−' : ''}${amountText(amount)}`,
      takeBack: urls.takeAdjustmentBack(job.id, id),
    })),
    net: amountText(due.taxExclusive),
    vat: due.vat.map(({ rate, taxable, tax }) => ({
      words: rate === null ? 'No VAT' : `VAT ${rate} % of ${amountText(taxable)}`,
      tax: amountText(tax),
    })),
    prepaid: Number(due.prepaid) === 0 ? '' : amountText(due.prepaid),
    payable: amountText(due.payable),
    currency: workshop.currency,
    ceiling: facts.ceilingGross === null ? '' : moneyText(facts.ceilingGross, workshop.currency),
    held: drafted.held.map(({ name, words }) => ({ name, words })),
    notBilled: drafted.notBilled.map(({ what, why }) => ({ what, why })),
    notes: [
      facts.menuPrice === null ? `${labourWords}.` : `${labourWords}; billed at the menu price.`,
      ...(overCeiling ? ['This is above what the customer said yes to: ask again before issuing.'] : []),
      ...draft.deduction.warnings,
    ],
    advice: facts.paper.advice.split('\n').filter((line) => line.trim() !== ''),
    moneyAhead: moneyAhead(draft),
    obstacles: page.obstacles,
    canIssue: !standing && lines.length > 0 && page.obstacles.length === 0,
    simplified:
      canSimplify && !standing && lines.length > 0 ? { limit: moneyText(workshop.simplifiedLimit ?? '0', workshop.currency) } : undefined,
    issued: standing ? { href: urls.invoice(standing.id), number: standing.number } : undefined,
    open: standing ? undefined : openForm(draft, page),
    add: {
      line: `${urls.draft(job.id)}?edit=new#form`,
      adjust: `${urls.draft(job.id)}?edit=adjust#form`,
      words: `${urls.draft(job.id)}?edit=words#form`,
      deposit: `${urls.draft(job.id)}?edit=deposit#form`,
      depositBack: facts.onAccount.length > 0 ? `${urls.draft(job.id)}?edit=deposit-back#form` : undefined,
    },
    issueAction: urls.issue(job.id),
    errors: Object.values(page.forms).flatMap(({ summary }) => summary),
  };
}
