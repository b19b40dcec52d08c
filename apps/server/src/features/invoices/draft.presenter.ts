import { units } from '#libs/invoicing';
import { Decimal } from '#libs/money';
import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { amountText, moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { EditedLine } from './draft-edits.ts';
import type { Draft } from './drafts.service.ts';
import { labourHours } from './job-work.ts';
import { withoutZeros } from './print.presenter.ts';

export interface DraftView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  customer: string;
  lines: { what: string; quantity: string; price: string; vat: string; net: string; changedWhy: string; editHref: string }[];
  net: string;
  vat: { words: string; tax: string }[];
  payable: string;
  currency: string;
  ceiling: string;
  held: { name: string; words: string }[];
  notBilled: { what: string; why: string }[];
  notes: string[];
  obstacles: string[];
  canIssue: boolean;
  issued: { href: string; number: string } | undefined;
  edit: { action: string; origin: string; legend: string; isNew: boolean; fields: Record<string, FieldView> } | undefined;
  addHref: string;
  issueAction: string;
  errors: FormState['summary'];
}

const unitShort = (code: string): string => units.find((unit) => unit.code === code)?.short ?? code;

function editForm(
  form: FormState,
  { jobId, line, isNew }: { jobId: string; line: EditedLine | undefined; isNew: boolean },
): DraftView['edit'] {
  if (!line && !isNew) return undefined;
  return {
    action: urls.editLine(jobId),
    origin: line?.origin ?? '',
    isNew,
    legend: line ? `Change “${line.name}”` : 'Add a line',
    fields: formFields(form, [
      { name: 'description', label: 'What', value: line?.name ?? '', required: true, maxlength: 200 },
      {
        name: 'quantity',
        label: 'Quantity',
        value: line?.quantity ?? '1',
        unit: line ? unitShort(line.unit) : '',
        inputmode: 'decimal',
        required: true,
        short: true,
      },
      { name: 'unitPrice', label: 'Price before tax', value: line?.unitPrice ?? '', inputmode: 'decimal', required: true, short: true },
      { name: 'why', label: 'Why', required: true, maxlength: 300, hint: 'Kept with the job; the owner sees it.' },
    ]),
  };
}

export function presentDraft(
  draft: Draft,
  { form, obstacles, editing }: { form: FormState; obstacles: string[]; editing: string | undefined },
): DraftView {
  const { facts, workshop, totals, drafted, lines } = draft;
  const { hours, isRecorded } = labourHours(draft.card);
  const issued = facts.invoices.find(({ kind }) => kind === 'invoice');
  const overCeiling = facts.ceilingGross !== null && new Decimal(totals.payable).gt(facts.ceilingGross);
  return {
    title: `Draft, job ${facts.job.number}`,
    head: {
      title: 'Draft',
      lead: `Job ${facts.job.number}, ${facts.vehicle.makeAndModel}, ${facts.customer.name}.`,
      rest: issued ? '' : 'Computed from the job each time it is opened; your changes lie over it.',
      actions: [{ href: urls.job(facts.job.id), label: 'To the job' }],
    },
    customer: facts.customer.name,
    lines: lines.map((line, index) => ({
      what: [line.name, line.itemNumber].filter((part) => part !== undefined).join(', '),
      quantity: `${withoutZeros(line.quantity)} ${unitShort(line.unit)}`.trim(),
      price: line.unitPrice,
      vat: line.vatRate === null ? '–' : `${line.vatRate} %`,
      net: amountText(totals.lines[index]?.net ?? '0'),
      changedWhy: line.changedWhy ?? '',
      editHref: `${urls.draft(facts.job.id)}?edit=${encodeURIComponent(line.origin)}#line`,
    })),
    net: amountText(totals.taxExclusive),
    vat: totals.vat.map(({ rate, taxable, tax }) => ({
      words: rate === null ? 'No VAT' : `VAT ${rate} % of ${amountText(taxable)}`,
      tax: amountText(tax),
    })),
    payable: amountText(totals.payable),
    currency: workshop.currency,
    ceiling: facts.ceilingGross === null ? '' : moneyText(facts.ceilingGross, workshop.currency),
    held: drafted.held.map(({ name, words }) => ({ name, words })),
    notBilled: drafted.notBilled.map(({ what, why }) => ({ what, why })),
    notes: [
      isRecorded ? `Labour: ${hours} h by the card’s clock.` : `Labour: ${hours} h as planned; nobody ran the clock on the card.`,
      ...(overCeiling ? ['This is above what the customer said yes to: ask again before issuing.'] : []),
    ],
    obstacles,
    canIssue: !issued && lines.length > 0 && obstacles.length === 0,
    issued: issued ? { href: urls.invoice(issued.id), number: issued.number } : undefined,
    edit: issued
      ? undefined
      : editForm(form, { jobId: facts.job.id, line: lines.find(({ origin }) => origin === editing), isNew: editing === 'new' }),
    addHref: `${urls.draft(facts.job.id)}?edit=new#line`,
    issueAction: urls.issue(facts.job.id),
    errors: form.summary,
  };
}
