import type { PartFamily } from '#libs/fitment';
import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formField, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { Supplier } from './suppliers.repository.ts';
import { listingSpecs, PROVENANCE_OPTIONS, valueSpec } from './variants.presenter.ts';

export interface VariantFormView {
  title: string;
  head: { title: string; lead: string; rest: string };
  action: string;
  page: string;
  back: string;
  family: string;
  families: { href: string; name: string; isCurrent: boolean }[];
  hasSuppliers: boolean;
  addSupplier: string;
  fields: Record<string, FieldView>;
  features: { key: string; field: FieldView; criticality: string }[];
  errors: FormState['summary'];
}

export interface VariantFormFacts {
  family: PartFamily;
  families: readonly PartFamily[];
  suppliers: readonly Supplier[];
  engineCode: string;
  currency: string;
}

export function presentVariantForm(
  form: FormState,
  { family, families, suppliers, engineCode, currency }: VariantFormFacts,
): VariantFormView {
  const pageOf = (id: string): string => `${urls.newVariant}?family=${encodeURIComponent(id)}`;
  return {
    title: 'Add a variant',
    head: {
      title: 'Add a variant',
      lead: `A ${family.name} as a catalogue lists it.`,
      rest: 'Leave open what the list does not say: an open feature counts neither for nor against it.',
    },
    action: urls.newVariant,
    page: pageOf(family.id),
    back: urls.variants,
    family: family.id,
    families: families.map(({ id, name }) => ({ href: pageOf(id), name, isCurrent: id === family.id })),
    hasSuppliers: suppliers.length > 0,
    addSupplier: urls.newSupplier,
    errors: form.summary,
    fields: formFields(form, [
      { name: 'supplierId', label: 'Supplier', required: true, options: suppliers.map(({ id, name }) => ({ value: id, label: name })) },
      { name: 'partNumber', label: 'Part number', required: true, maxlength: 40, autocomplete: 'off' },
      { name: 'name', label: 'What it is', value: family.name, required: true, maxlength: 120 },
      { name: 'priceNet', label: 'Net price', unit: currency, inputmode: 'decimal', required: true, maxlength: 10 },
      { name: 'coreCharge', label: 'Core charge', value: '0', unit: currency, inputmode: 'decimal', maxlength: 10 },
      ...listingSpecs().map((spec) => (spec.name === 'engineCode' ? { ...spec, value: engineCode } : spec)),
      { name: 'provenance', label: 'What follows is', value: 'listing', options: PROVENANCE_OPTIONS },
    ]),
    features: family.features.map((feature, index) => ({
      key: feature.key,
      criticality: feature.criticality,
      // The fields are sent as one list; each goes back to its own place by its position.
      field: { ...formField(form, { ...valueSpec(feature, { name: `value.${index}` }), optional: true }), name: 'value' },
    })),
  };
}
