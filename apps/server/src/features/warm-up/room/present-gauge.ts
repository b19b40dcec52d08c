import { gaugeObservation } from '#libs/warm-up';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { plainDate } from '../../../web/dates.ts';
import { type FieldView, formFields } from '../../../web/form-field.ts';
import { temperatureText } from '../../../web/figures.ts';
import type { GaugeLook } from '../keeping/gauge-looks.repository.ts';

export interface LookView {
  what: string;
  who: string;
  peg: string;
  supports: string;
  words: string[];
  cautions: string[];
}

const READING_WORDS = {
  'stays-cold': 'stayed cold',
  'below-middle': 'stayed below its middle',
  middle: 'stood in its middle',
  hot: 'went into the red',
} as const;

const SUPPORTS = {
  'never-warms': { peg: 'inconclusive', word: 'supports “never warms”' },
  overheats: { peg: 'does-not-fit', word: 'overheats' },
  nothing: { peg: 'not-read', word: 'proves nothing' },
} as const;

export function presentLook({ role, observation, lookedOn, keptById }: GaugeLook, names: ReadonlyMap<string, string>): LookView {
  const { supports, reasons, advice, cautions } = gaugeObservation(observation);
  const outside = observation.outsideC === undefined ? '' : ` at ${temperatureText(observation.outsideC)} outside`;
  return {
    what: `${role === 'before' ? 'Before' : 'After'} the repair, ${plainDate(lookedOn)}: the gauge ${READING_WORDS[observation.reading]} after ${observation.minutesDriven} minutes${outside}`,
    who: names.get(keptById) ?? '',
    peg: SUPPORTS[supports].peg,
    supports: SUPPORTS[supports].word,
    words: [...reasons, ...advice],
    cautions,
  };
}

export const gaugeFields = (form: FormState, role: string): Record<string, FieldView> =>
  formFields(form, [
    {
      name: 'reading',
      label: 'The gauge',
      value: 'stays-cold',
      options: Object.entries(READING_WORDS).map(([value, label]) => ({ value, label })),
    },
    { name: 'minutesDriven', label: 'After', unit: 'min', inputmode: 'numeric', required: true, short: true, maxlength: 3 },
    { name: 'outsideC', label: 'Outside', unit: '°C', inputmode: 'numeric', optional: true, short: true, maxlength: 4 },
    {
      name: 'gaugeRole',
      label: 'Seen',
      value: role,
      options: [
        { value: 'before', label: 'Before the repair' },
        { value: 'after', label: 'After the repair' },
      ],
    },
  ]);
