import { creditLeft, type InvoiceDocument, linesLeft, units } from '#libs/invoicing';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { type FieldView, formField } from '../../../web/form-field.ts';
import { amountText } from '../../../web/money-text.ts';
import { urls } from '../../../web/urls.ts';
import type { InvoiceRow } from '../invoices.repository.ts';
import { withoutZeros } from '../print.presenter.ts';

interface CreditInput {
  value: string;
  error: string | undefined;
  label: string;
  id: string;
}

export interface CreditView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  action: string;
  isWhole: boolean;
  wholeWords: string;
  left: { words: string; net: string; tax: string }[];
  lines: { lineId: string; what: string; left: string; net: string; quantity: CreditInput; amount: CreditInput }[];
  /** What is wrong with a column as a whole. */
  wrong: string[];
  reason: FieldView;
  currency: string;
  nothing: boolean;
  errors: FormState['summary'];
}

const unitShort = (code: string): string => units.find((unit) => unit.code === code)?.short ?? code;

export function presentCredit(
  invoice: InvoiceRow,
  { earlier, form }: { earlier: readonly InvoiceDocument[]; form: FormState },
): CreditView {
  const { document, number, currency } = invoice;
  const { rows } = creditLeft(document, earlier);
  const open = rows.filter(({ taxable, tax }) => Number(taxable) !== 0 || Number(tax) !== 0);
  const left = new Map(linesLeft(document, earlier).map((line) => [line.lineId, line]));
  const input = (name: string, row: number, label: string): CreditInput => ({
    value: form.values[`${name}.${row}`] ?? (document.lines.length === 1 ? (form.values[name] ?? '') : ''),
    error: form.errors[`${name}.${row}`],
    label,
    id: `${name}-${row}`,
  });
  return {
    title: `Credit ${number}`,
    head: {
      title: `Credit ${number}`,
      lead: 'A credit note corrects what was issued; it never changes afterwards.',
      rest: 'It refers to the invoice and takes back net and tax at each rate, never more than is left.',
      actions: [{ href: urls.invoice(invoice.id), label: 'Back to the invoice' }],
    },
    action: urls.credit(invoice.id),
    isWhole: form.values['what'] !== 'parts',
    wholeWords: earlier.length === 0 ? 'All of it' : 'All that is left of it',
    left: open.map(({ rate, taxable, tax }) => ({
      words: rate === null ? 'No VAT' : `VAT ${rate} %`,
      net: amountText(taxable),
      tax: amountText(tax),
    })),
    lines: document.lines.map((line, row) => {
      const rest = left.get(line.id);
      return {
        lineId: line.id,
        what: [line.name, line.itemNumber].filter((part) => part !== undefined).join(', '),
        left: `${withoutZeros(rest?.quantity ?? '0')} ${unitShort(line.unit)}`.trim(),
        net: amountText(rest?.net ?? '0'),
        quantity: input('quantities', row, `How many of “${line.name}” are taken back`),
        amount: input('amounts', row, `Money off “${line.name}”, before tax`),
      };
    }),
    wrong: ['quantities', 'amounts', 'lineIds'].flatMap((name) => form.errors[name] ?? []),
    reason: formField(form, {
      name: 'reason',
      label: 'What is corrected and why',
      required: true,
      maxlength: 200,
      hint: 'Stands on the credit note.',
    }),
    currency,
    nothing: open.length === 0,
    errors: form.summary,
  };
}
