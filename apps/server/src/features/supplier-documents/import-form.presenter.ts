import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { SupplierName } from './documents.repository.ts';

export interface ImportFormView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  back: string;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

export function presentImportForm(form: FormState, suppliers: readonly SupplierName[]): ImportFormView {
  return {
    title: 'Take in a file',
    head: {
      title: 'Take in a file',
      lead: 'A statement or a list of credits, as CSV.',
      rest: 'You see what it says before anything is written. The same file twice changes nothing.',
    },
    action: urls.paperFile,
    back: urls.papers,
    fields: formFields(form, [
      { name: 'supplierId', label: 'Supplier', required: true, options: suppliers.map(({ id, name }) => ({ value: id, label: name })) },
      {
        name: 'kind',
        label: 'What is in it',
        required: true,
        options: [
          { value: 'statement', label: 'A statement: totals of documents, with tax' },
          { value: 'credit-lines', label: 'Credit notes: lines for pieces, net' },
        ],
      },
      { name: 'file', label: 'File', type: 'file', required: true, hint: 'CSV or text, 5 MB at most, 20,000 rows at most.' },
    ]),
    errors: form.summary,
  };
}
