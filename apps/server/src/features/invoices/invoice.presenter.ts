import { structuredProblems } from '#libs/invoicing';
import type { FormState } from '../../platform/pages/form-state.ts';
import { isoDay, plainDate } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { amountText, moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { InvoiceRow } from './invoices.repository.ts';
import { openOn } from './payments.service.ts';
import { presentPrint, type PrintView } from './print.presenter.ts';

const METHOD_WORDS: Readonly<Record<string, string>> = { cash: 'cash', card: 'card', transfer: 'bank transfer', other: 'otherwise' };

export interface InvoiceView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  print: PrintView;
  pdfHref: string;
  structured: { ublHref: string; ciiHref: string } | undefined;
  /** What EN 16931 wants and is not on it. */
  unstructured: string[];
  jobHref: string | undefined;
  /** The newest, where the job has one. */
  proofHref: string | undefined;
  payments: { amount: string; how: string; on: string; reference: string }[];
  open: string;
  isPaid: boolean;
  pay: { action: string; fields: Record<string, FieldView> } | undefined;
  errors: FormState['summary'];
}

export function presentInvoice(
  invoice: InvoiceRow,
  { form, now, timeZone, isDemo, hasProof }: { form: FormState; now: Date; timeZone: string; isDemo: boolean; hasProof: boolean },
): InvoiceView {
  const open = openOn(invoice);
  const isPaid = Number(open) === 0;
  const problems = structuredProblems(invoice.document);
  return {
    title: `Invoice ${invoice.number}`,
    head: {
      title: `Invoice ${invoice.number}`,
      lead: isPaid ? 'Paid in full.' : `${moneyText(open, invoice.currency)} to pay by ${plainDate(invoice.dueOn)}.`,
      rest: 'Issued: nothing on it changes any more.',
      actions: [{ href: urls.invoicePdf(invoice.id), label: 'The printed page (PDF)', main: true }],
    },
    print: presentPrint(invoice.document, isDemo),
    pdfHref: urls.invoicePdf(invoice.id),
    structured: problems.length > 0 ? undefined : { ublHref: urls.invoiceUbl(invoice.id), ciiHref: urls.invoiceCii(invoice.id) },
    unstructured: problems.map(({ what }) => what),
    jobHref: invoice.jobId === null ? undefined : urls.job(invoice.jobId),
    proofHref: invoice.jobId !== null && hasProof ? urls.newestProof(invoice.jobId) : undefined,
    payments: invoice.payments.map(({ amount, method, paidOn, reference }) => ({
      amount: amountText(amount),
      how: METHOD_WORDS[method] ?? method,
      on: plainDate(paidOn),
      reference,
    })),
    open: moneyText(open, invoice.currency),
    isPaid,
    pay: isPaid
      ? undefined
      : {
          action: urls.pay(invoice.id),
          fields: formFields(form, [
            { name: 'amount', label: 'Amount', value: open, unit: invoice.currency, inputmode: 'decimal', required: true, short: true },
            {
              name: 'method',
              label: 'How',
              value: 'card',
              options: [
                { value: 'card', label: 'Card' },
                { value: 'cash', label: 'Cash' },
                { value: 'transfer', label: 'Bank transfer' },
                { value: 'other', label: 'Otherwise' },
              ],
            },
            {
              name: 'reference',
              label: 'Reference',
              optional: true,
              maxlength: 60,
              hint: 'The slip’s or the transfer’s; never a card number.',
            },
            { name: 'paidOn', label: 'Day', type: 'date', value: isoDay(now, timeZone), required: true },
          ]),
        },
    errors: form.summary,
  };
}
