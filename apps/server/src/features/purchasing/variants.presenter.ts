import type { FamilyFeature } from '#libs/fitment';
import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import { capital, PROVENANCE_WORDS, valueText } from '../../web/feature-text.ts';
import type { Listing, Variant } from './variants.repository.ts';

const monthText = (day: Date | null): string => (day === null ? '' : day.toISOString().slice(0, 7));

/** @example listingText({ engineCode: 'TK14', builtFrom: null, builtTo: null, … }) // 'TK14, any year' */
export function listingText({ engineCode, builtFrom, builtTo }: Listing): string {
  if (builtFrom === null && builtTo === null) return `${engineCode}, any year`;
  return `${engineCode}, ${monthText(builtFrom)} to ${monthText(builtTo) || 'now'}`;
}

export interface VariantsView {
  title: string;
  words: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  action: string;
  variants: { href: string; partNumber: string; name: string; supplier: string; engines: string; said: string; price: string }[];
  isEmpty: boolean;
}

export function presentVariants(words: string, variants: readonly Variant[], currency: string): VariantsView {
  return {
    title: 'Variants',
    words,
    action: urls.variants,
    head: {
      title: 'Variants',
      lead: variants.length === 0 ? 'No variant to show.' : `${variants.length} to show.`,
      rest: 'Find by engine code, part number or supplier.',
      actions: [
        { href: urls.orders, label: 'To the orders' },
        { href: urls.newVariant, label: 'Add a variant', main: true },
      ],
    },
    variants: variants.map((variant) => ({
      href: urls.variant(variant.id),
      partNumber: variant.partNumber,
      name: variant.name,
      supplier: variant.supplier.name,
      engines: variant.listings.map(listingText).join('; '),
      said: saidText(variant),
      price: moneyText(variant.priceNet, currency),
    })),
    isEmpty: variants.length === 0,
  };
}

/** Its features in words, all or only some, so that two numbers can be told apart in a list. */
export function saidText({ family, stated }: Variant, only?: readonly string[]): string {
  return family.features
    .filter(({ key }) => only === undefined || only.includes(key))
    .flatMap((feature) => {
      const said = stated.get(feature.key);
      return said ? [`${feature.name} ${valueText(feature, said.value)}`] : [];
    })
    .join(', ');
}

export interface VariantView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  features: {
    name: string;
    criticality: string;
    value: string;
    how: string;
    statements: { said: string; withdraw: string }[];
    sayHref: string;
  }[];
  listings: { engine: string; catalogue: string }[];
  say: { name: string; hint: string; key: string; fields: Record<string, FieldView>; action: string; back: string } | undefined;
  price: { action: string; fields: Record<string, FieldView> };
  listing: { action: string; fields: Record<string, FieldView> };
  errors: FormState['summary'];
  page: string;
}

export interface VariantForms {
  statement: FormState;
  price: FormState;
  listing: FormState;
}

export function presentVariant(
  variant: Variant,
  { forms, saying, currency, days }: { forms: VariantForms; saying: string; currency: string; days: (at: Date) => string },
): VariantView {
  const values = variant.stated;
  const page = urls.variant(variant.id);
  const feature = variant.family.features.find(({ key }) => key === saying);
  return {
    title: variant.partNumber,
    page,
    head: {
      title: variant.partNumber,
      lead: `${variant.name}, ${variant.supplier.name}, ${moneyText(variant.priceNet, currency)}.`,
      rest: 'What is measured in the hand counts before a photo, and a photo before a list. Differing statements stay side by side.',
      actions: [{ href: urls.variants, label: 'To the variants' }],
    },
    features: variant.family.features.map((one) => {
      const taken = values.get(one.key);
      return {
        name: capital(one.name),
        criticality: one.criticality,
        value: taken ? valueText(one, taken.value) : 'not said',
        how: taken ? (PROVENANCE_WORDS[taken.provenance] ?? taken.provenance) : '',
        statements: variant.statements
          .filter((said) => said.feature === one.key)
          .map((said) => ({
            said: `${valueText(one, said.figure ?? said.words ?? '')}, ${PROVENANCE_WORDS[said.provenance] ?? said.provenance} ${days(said.saidAt)}`,
            withdraw: `${page}/statements/${said.id}/withdraw`,
          })),
        sayHref: `${page}?say=${encodeURIComponent(one.key)}#say`,
      };
    }),
    listings: variant.listings.map((listing) => ({ engine: listingText(listing), catalogue: listing.catalogue })),
    say: feature && sayForm(variant, feature, forms.statement),
    price: {
      action: `${page}/price`,
      fields: formFields(forms.price, [
        { name: 'priceNet', label: 'Net price', value: variant.priceNet, unit: currency, inputmode: 'decimal', maxlength: 10, short: true },
      ]),
    },
    listing: { action: `${page}/listings`, fields: formFields(forms.listing, listingSpecs()) },
    errors: [...forms.statement.summary, ...forms.price.summary, ...forms.listing.summary],
  };
}

export const listingSpecs = () => [
  { name: 'engineCode', label: 'Engine code', required: true, maxlength: 20, autocomplete: 'off' },
  { name: 'builtFrom', label: 'Built from', optional: true, short: true, maxlength: 7, placeholder: '2014-01' },
  { name: 'builtTo', label: 'Built to', optional: true, short: true, maxlength: 7, placeholder: '2019-06' },
  { name: 'catalogue', label: 'Catalogue', required: true, maxlength: 120 },
];

export const PROVENANCE_OPTIONS = [
  { value: 'listing', label: 'Listed by a catalogue or supplier' },
  { value: 'measured', label: 'Measured on the piece' },
  { value: 'photo', label: 'Seen on a photo' },
];

function sayForm(variant: Variant, feature: FamilyFeature, form: FormState): VariantView['say'] {
  const page = urls.variant(variant.id);
  return {
    name: capital(feature.name),
    key: feature.key,
    hint: feature.howToMeasure,
    action: `${page}/statements`,
    back: page,
    fields: formFields(form, [
      valueSpec(feature, { name: 'value', required: true }),
      { name: 'provenance', label: 'From', value: 'measured', options: PROVENANCE_OPTIONS },
    ]),
  };
}

/** A figure with its unit, or a choice among the kinds. */
export function valueSpec(feature: FamilyFeature, spec: { name: string; required?: boolean }) {
  if (feature.kind === 'number') {
    const unit = feature.unit === 'count' ? {} : { unit: feature.unit };
    return { ...spec, ...unit, label: capital(feature.name), inputmode: 'decimal', maxlength: 10, autocomplete: 'off' };
  }
  const options = [{ value: '', label: 'not said' }, ...feature.values.map(({ key, name }) => ({ value: key, label: name }))];
  return { ...spec, label: capital(feature.name), options };
}
