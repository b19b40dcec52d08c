import type { FamilyFeature } from '#libs/fitment';
import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formField } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';

interface Plate {
  id: string;
  value: string;
  label: string;
  note: string;
  checked: boolean;
}

/** The form for one feature: a kind as plates, a figure with its instrument. */
export interface ReadingForm {
  action: string;
  feature: string;
  name: string;
  instruction: string;
  kinds: { legend: string; name: string; options: Plate[] } | undefined;
  figure: FieldView | undefined;
  instruments: { legend: string; name: string; options: Plate[] } | undefined;
  why: FieldView;
  /** The reason was refused: its fold stands open. */
  isUnreadOpen: boolean;
  place: { legend: string; name: string; options: Plate[] };
}

const INSTRUMENT_WORDS: Readonly<Record<string, string>> = {
  eye: 'By eye',
  stamp: 'Stamp',
  'steel-rule': 'Steel rule',
  vernier: 'Vernier',
  'thread-gauge': 'Thread gauge',
  'cap-tester': 'Cap tester',
  ohmmeter: 'Ohmmeter',
};

export function readingForm(
  feature: FamilyFeature | undefined,
  { jobId, form, unread }: { jobId: string; form: FormState; unread: FormState },
): ReadingForm | undefined {
  if (!feature) return undefined;
  const chosen = (name: string, value: string, isFirst: boolean): boolean =>
    form.values[name] === undefined ? isFirst : form.values[name] === value;
  return {
    action: urls.readPart(jobId),
    feature: feature.key,
    name: feature.name,
    instruction: feature.howToMeasure,
    kinds:
      feature.kind === 'category'
        ? {
            legend: `The ${feature.name}`,
            name: 'value',
            options: feature.values.map(({ key, name }) => ({
              id: `value-${key}`,
              value: key,
              label: name,
              note: '',
              checked: form.values['value'] === key,
            })),
          }
        : undefined,
    figure:
      feature.kind === 'number'
        ? formField(form, {
            name: 'value',
            label: `The ${feature.name}`,
            unit: feature.unit === 'count' ? '' : feature.unit,
            inputmode: 'decimal',
            maxlength: 12,
          })
        : undefined,
    instruments:
      feature.kind === 'number'
        ? {
            legend: 'Read with',
            name: 'instrument',
            options: feature.instruments.map(({ instrument, expandedUncertainty }, index) => ({
              id: `instrument-${instrument}`,
              value: instrument,
              label: INSTRUMENT_WORDS[instrument] ?? instrument,
              note: expandedUncertainty === 0 ? 'exact' : `± ${expandedUncertainty}`,
              checked: chosen('instrument', instrument, index === 0),
            })),
          }
        : undefined,
    place: {
      legend: 'Where',
      name: 'place',
      options: [
        { id: 'place-part', value: 'removed-part', label: 'Removed part', note: '', checked: chosen('place', 'removed-part', true) },
        { id: 'place-recess', value: 'recess', label: 'Recess in the engine', note: '', checked: chosen('place', 'recess', false) },
      ],
    },
    why: formField(unread, { name: 'why', label: 'Why it could not be read', maxlength: 200, required: true }),
    isUnreadOpen: unread.summary.length > 0,
  };
}
