import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formField, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { SupplierName } from './documents.repository.ts';

const ROWS = 8;

export interface PaperFormView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  back: string;
  fields: Record<string, FieldView>;
  rows: { number: number; cells: { name: string; id: string; label: string; value: string; error: string | undefined; kind: string }[] }[];
  button: string;
  errors: FormState['summary'];
}

const COLUMNS = [
  { name: 'part', label: 'Part number', kind: 'text' },
  { name: 'text', label: 'What it says', kind: 'text' },
  { name: 'reference', label: 'Our reference', kind: 'text' },
  { name: 'quantity', label: 'Pieces', kind: 'numeric' },
  { name: 'amount', label: 'Net of the line', kind: 'decimal' },
] as const;

export function presentPaperForm(
  form: FormState,
  { kind, suppliers, currency }: { kind: 'credit-note' | 'invoice'; suppliers: readonly SupplierName[]; currency: string },
): PaperFormView {
  const isCredit = kind === 'credit-note';
  return {
    title: isCredit ? 'Credit note' : 'Purchase invoice',
    head: {
      title: isCredit ? 'Credit note' : 'Purchase invoice',
      lead: isCredit ? 'What came back, as the paper says it.' : 'What was charged, as the paper says it.',
      rest: isCredit
        ? 'Each line is laid on the pieces it credits; what is not clear is asked.'
        : 'Each line is laid on the pieces it charges; a price that is not the ordered one is named and corrected.',
    },
    action: urls.newPaper(kind),
    back: urls.papers,
    fields: formFields(form, [
      { name: 'supplierId', label: 'Supplier', required: true, options: suppliers.map(({ id, name }) => ({ value: id, label: name })) },
      {
        name: 'number',
        label: isCredit ? 'Number of the credit note' : 'Number of the invoice',
        required: true,
        maxlength: 60,
        autocomplete: 'off',
      },
      { name: 'datedOn', label: 'Dated', type: 'date', required: true },
      { name: 'gross', label: 'Total with tax', optional: true, unit: currency, inputmode: 'decimal', maxlength: 14 },
    ]),
    rows: Array.from({ length: ROWS }, (_, index) => ({
      number: index + 1,
      cells: COLUMNS.map(({ name, label, kind: type }) => {
        const id = `${name}.${index}`;
        const field = formField(form, { name: id, label });
        return { name, id, label: `${label}, line ${index + 1}`, value: field.value ?? '', error: field.error, kind: type };
      }),
    })),
    button: isCredit ? 'Enter the credit note' : 'Enter the invoice',
    errors: form.summary,
  };
}
