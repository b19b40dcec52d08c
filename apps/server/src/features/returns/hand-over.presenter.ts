import type { FormState } from '../../platform/pages/form-state.ts';
import { plainDate } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { termsText } from '../../web/terms-text.ts';
import { urls } from '../../web/urls.ts';
import type { ShelfUnit } from './shelf.service.ts';

export interface HandOverView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  makeNote: string;
  back: string;
  units: { id: string; label: string; what: string; by: string; amount: string; note: string; isTicked: boolean }[];
  hasUnits: boolean;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

/** What leaves for one supplier with one signature. */
export function presentHandOver(
  form: FormState,
  { units: theirs, currency }: { units: readonly ShelfUnit[]; currency: string },
  supplierId: string,
): HandOverView {
  const supplier = theirs[0]?.unit.variant.supplier;
  return {
    title: 'Hand over',
    head: {
      title: 'Hand over',
      lead: supplier ? `${theirs.length} for ${supplier.name}.` : 'Nothing is waiting to go to this supplier.',
      rest: supplier ? `They: ${termsText(supplier, currency)}. Put each code on its box before it leaves.` : '',
    },
    action: urls.handOver(supplierId),
    makeNote: urls.makeReturnNote(supplierId),
    back: urls.returnsShelf,
    hasUnits: theirs.length > 0,
    units: theirs.map(({ unit, open, against }) => ({
      id: unit.id,
      label: unit.label,
      what: `${unit.variant.partNumber}, ${unit.variant.name}`,
      by: unit.returnBy ? plainDate(unit.returnBy) : '',
      amount: moneyText(open, currency),
      note: against ?? '',
      isTicked: against === null,
    })),
    fields: formFields(form, [
      {
        name: 'evidence',
        label: 'Signed by, or tracking number',
        required: true,
        maxlength: 120,
        autocomplete: 'off',
        hint: 'Without it nobody can prove that they left.',
      },
    ]),
    errors: form.summary,
  };
}
