import { openAmount } from '#libs/unit-life';
import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { Unit } from '../returns/units.service.ts';
import type { OrderJob } from './orders.repository.ts';
import type { Variant } from './variants.repository.ts';
import { listingText, saidText } from './variants.presenter.ts';

export interface OrderFormView {
  title: string;
  head: { title: string; lead: string; rest: string; keyTag: { key: string; href: string } | undefined };
  action: string;
  back: string;
  variants: {
    id: string;
    partNumber: string;
    supplier: string;
    said: string;
    listed: string;
    price: string;
    note: string;
    isTicked: boolean;
  }[];
  /** Free pieces of these variants on our own shelf. */
  stock: { label: string; href: string; what: string; cost: string; note: string; take: string }[];
  hasVariants: boolean;
  fields: Record<string, FieldView>;
  button: string;
  whyEmpty: string;
  addHref: string;
  errors: FormState['summary'];
}

export interface OrderFormFacts {
  job: OrderJob;
  variants: readonly Variant[];
  units: readonly Unit[];
  stocked: readonly Unit[];
  currency: string;
}

const GONE = new Set(['called-off', 'never-came', 'gone-for-good', 'written-off', 'handed-over']);

export function presentOrderForm(form: FormState, { job, variants, units, stocked, currency }: OrderFormFacts): OrderFormView {
  const here = new Map(units.filter(({ place }) => !GONE.has(place)).map((unit) => [unit.variant.id, unit]));
  const differing = differingFeatures(variants);
  const open = variants.filter(({ id }) => !here.has(id)).length;
  return {
    title: 'Order for a job',
    head: {
      title: 'Order',
      lead: leadOf(job, variants.length),
      rest: `${job.car}, ${job.registration}${built(job)}. Engine code and build month narrow the list for nothing.`,
      keyTag: job.keyTag === null ? undefined : { key: String(job.keyTag), href: urls.jobParts(job.id) },
    },
    action: urls.orderForJob(job.id),
    back: urls.jobParts(job.id),
    hasVariants: variants.length > 0,
    variants: variants.map((variant) => {
      const unit = here.get(variant.id);
      return {
        id: variant.id,
        partNumber: variant.partNumber,
        supplier: variant.supplier.name,
        said: saidText(variant, differing),
        listed: variant.listings
          .filter(({ engineCode }) => engineCode === job.engineCode)
          .map(listingText)
          .join('; '),
        price: moneyText(variant.priceNet, currency),
        note: unit ? `${unit.label} is for this job already` : variant.supplier.unopenedOnly ? 'taken back unopened only' : '',
        isTicked: unit === undefined,
      };
    }),
    stock: stocked.map((unit) => ({
      label: unit.label,
      href: urls.unit(unit.id),
      what: `${unit.variant.partNumber}, ${unit.variant.name}`,
      cost: moneyText(openAmount(unit.money).toFixed(2), currency),
      note: unit.isOpened ? 'box opened' : '',
      take: urls.takeFromStock(job.id, unit.id),
    })),
    button: open === 0 ? 'Order what is ticked' : `Order ${open === variants.length ? 'all' : 'the other'} ${open}`,
    whyEmpty:
      job.engineCode === ''
        ? 'The vehicle has no engine code on record: a list for any engine would be no list.'
        : `No variant is listed for ${job.engineCode}. Add what the catalogue says.`,
    addHref: `${urls.newVariant}?engine=${encodeURIComponent(job.engineCode)}`,
    fields: formFields(form, [{ name: 'expectedOn', label: 'Should come on', type: 'date', optional: true }]),
    errors: form.summary,
  };
}

function leadOf({ engineCode }: OrderJob, count: number): string {
  if (count === 0) return 'Nothing is listed for this engine.';
  return count === 1 ? `One variant is listed for ${engineCode}.` : `${count} variants are listed for ${engineCode}.`;
}

function built({ buildYear, buildMonth }: OrderJob): string {
  if (buildYear === null) return '';
  return `, built ${buildMonth === null ? '' : `${String(buildMonth).padStart(2, '0')}/`}${buildYear}`;
}

/** Features that tell these variants apart; what is the same in all of them helps nobody to choose. */
function differingFeatures(variants: readonly Variant[]): readonly string[] {
  const keys = new Set(variants.flatMap(({ stated }) => [...stated.keys()]));
  return [...keys].filter((key) => new Set(variants.map(({ stated }) => stated.get(key)?.value)).size > 1);
}
