import { structuredProblems } from '#libs/invoicing';
import { Decimal, sumAmounts } from '#libs/money';
import type { FormState } from '../../platform/pages/form-state.ts';
import { isoDay, plainDate } from '../../web/dates.ts';
import { type FieldSpec, type FieldView, formFields } from '../../web/form-field.ts';
import { amountText, moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { InvoiceRow } from './invoices.repository.ts';
import { METHOD_OPTIONS, METHOD_WORDS } from './money/method-words.ts';
import { mostBack, openOn } from './money/payments.service.ts';
import { presentPrint, type PrintView } from './print.presenter.ts';

interface MoneyForm {
  action: string;
  fields: FieldView[];
}

export interface InvoiceView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  print: PrintView;
  structured: { ublHref: string; ciiHref: string } | undefined;
  /** What EN 16931 wants and is not on it. */
  unstructured: string[];
  jobHref: string | undefined;
  /** The newest, where the job has one. */
  proofHref: string | undefined;
  original: { href: string; number: string } | undefined;
  credits: { href: string; number: string; on: string; amount: string }[];
  creditHref: string | undefined;
  isCreditNote: boolean;
  payments: { amount: string; how: string; on: string; reference: string; receipt: string }[];
  openWords: string;
  pay: MoneyForm | undefined;
  back: (MoneyForm & { most: string }) | undefined;
  errors: FormState['summary'];
}

interface Page {
  form: FormState;
  back: FormState;
  now: Date;
  timeZone: string;
  isDemo: boolean;
  hasProof: boolean;
}

const KIND_WORDS: Readonly<Record<string, string>> = { 'credit-note': 'Credit note', deposit: 'Deposit invoice', simplified: 'Invoice' };

function moneyFields({ currency }: InvoiceRow, day: string, { amount, label }: { amount: string; label: string }): FieldSpec[] {
  return [
    { name: 'amount', label, value: amount, unit: currency, inputmode: 'decimal', required: true, short: true },
    { name: 'method', label: 'How', value: 'card', options: METHOD_OPTIONS },
    { name: 'reference', label: 'Reference', optional: true, maxlength: 60, hint: 'The slip’s or the transfer’s; never a card number.' },
    { name: 'paidOn', label: 'Day', type: 'date', value: day, required: true },
  ];
}

/** Two forms with the same fields on one page: their ids differ. */
const apart = (fields: Record<string, FieldView>, prefix: string): FieldView[] =>
  Object.values(fields).map((field) => ({ ...field, id: `${prefix}-${field.id}` }));

function leadOf(invoice: InvoiceRow, open: Decimal): string {
  if (invoice.kind === 'credit-note')
    return `It takes back ${moneyText(invoice.payable, invoice.currency)} of ${invoice.original?.number ?? ''}.`;
  if (open.isZero()) return invoice.corrections.length > 0 && invoice.payments.length === 0 ? 'Taken back in full.' : 'Paid in full.';
  if (open.isNegative()) return `We owe the customer ${moneyText(open.abs().toFixed(2), invoice.currency)}.`;
  return `${moneyText(open.toFixed(2), invoice.currency)} to pay by ${plainDate(invoice.dueOn)}.`;
}

export function presentInvoice(invoice: InvoiceRow, { form, back, now, timeZone, isDemo, hasProof }: Page): InvoiceView {
  const { id, currency, corrections } = invoice;
  const isCreditNote = invoice.kind === 'credit-note';
  const open = new Decimal(openOn(invoice));
  const most = isCreditNote ? '0' : mostBack(invoice);
  const problems = structuredProblems(invoice.document);
  const title = `${KIND_WORDS[invoice.kind] ?? 'Invoice'} ${invoice.number}`;
  const left = new Decimal(invoice.taxInclusive).minus(sumAmounts(corrections.map(({ taxInclusive }) => taxInclusive)));
  const day = isoDay(now, timeZone);
  return {
    title,
    head: {
      title,
      lead: leadOf(invoice, open),
      rest: 'Issued: nothing on it changes any more.',
      actions: [{ href: urls.invoicePdf(id), label: 'The printed page (PDF)', main: true }],
    },
    print: presentPrint(invoice.document, isDemo),
    structured: problems.length > 0 ? undefined : { ublHref: urls.invoiceUbl(id), ciiHref: urls.invoiceCii(id) },
    unstructured: problems.map(({ what }) => what),
    jobHref: invoice.jobId === null ? undefined : urls.job(invoice.jobId),
    proofHref: invoice.jobId !== null && hasProof ? urls.newestProof(invoice.jobId) : undefined,
    original: invoice.original ? { href: urls.invoice(invoice.original.id), number: invoice.original.number } : undefined,
    credits: corrections.map((note) => ({
      href: urls.invoice(note.id),
      number: note.number,
      on: plainDate(note.issuedOn),
      amount: amountText(note.payable),
    })),
    creditHref: isCreditNote || left.isZero() ? undefined : urls.credit(id),
    isCreditNote,
    payments: invoice.payments.map((payment) => ({
      amount: amountText(payment.amount),
      how: METHOD_WORDS[payment.method] ?? payment.method,
      on: plainDate(payment.paidOn),
      reference: [payment.reference, payment.why].filter((part) => part !== '').join(', '),
      receipt: urls.receipt(payment.id),
    })),
    openWords: open.isNegative()
      ? `To give back: ${moneyText(open.abs().toFixed(2), currency)}`
      : `Still open: ${moneyText(open.toFixed(2), currency)}`,
    pay:
      isCreditNote || open.lte(0)
        ? undefined
        : {
            action: urls.pay(id),
            fields: apart(formFields(form, moneyFields(invoice, day, { amount: open.toFixed(2), label: 'Amount' })), 'pay'),
          },
    back: new Decimal(most).lte(0)
      ? undefined
      : {
          action: urls.payBack(id),
          most: moneyText(most, currency),
          fields: apart(
            formFields(back, [
              ...moneyFields(invoice, day, { amount: open.isNegative() ? open.abs().toFixed(2) : '', label: 'Amount given back' }),
              { name: 'why', label: 'Why', required: true, maxlength: 200 },
            ]),
            'back',
          ),
        },
    errors: [...form.summary, ...back.summary],
  };
}
