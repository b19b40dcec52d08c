import { refractometer, shownProtection } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import type { BenchField, ReadForm } from '../form/bench-field.ts';
import { plainGroup } from '../form/field-group.ts';
import { glycolField, glycolOf } from '../form/glycol-field.ts';
import { resultFigure, textFigure } from '../result-figure.ts';
import { saidFigure } from '../units/measure.ts';
import { asks, outcomeOf, type Tool } from './tool.ts';

function fields(): readonly BenchField[] {
  return [
    glycolField(),
    {
      kind: 'choice',
      name: 'reads',
      label: 'The scale reads',
      options: [
        { value: 'freezing', label: 'Freezing point' },
        { value: 'brix', label: 'Brix' },
        { value: 'index', label: 'Refractive index' },
      ],
      standing: { value: 'freezing', how: 'known', said: '' },
    },
    {
      kind: 'figure',
      quantity: 'temperature',
      name: 'shows',
      label: 'It shows',
      least: -60,
      most: 0,
      holds: 'The scale goes from',
      hint: 'Below zero with its minus sign.',
      when: 'when-reads-freezing',
    },
    {
      kind: 'choice',
      name: 'scale',
      label: 'The scale is made for',
      options: [
        { value: 'unsaid', label: 'Nobody knows' },
        { value: 'ethylene', label: 'Ethylene glycol' },
        { value: 'propylene', label: 'Propylene glycol' },
      ],
      standing: { value: 'unsaid', how: 'assumed', said: 'Look at the instrument: the wrong scale misleads by several degrees.' },
      when: 'when-reads-freezing',
    },
    {
      kind: 'figure',
      quantity: 'bare',
      name: 'brix',
      label: 'Brix',
      least: 0,
      most: 84,
      holds: 'The scale goes from',
      when: 'when-reads-brix',
    },
    {
      kind: 'figure',
      quantity: 'bare',
      name: 'index',
      label: 'Index at 20 °C',
      least: 1.3,
      most: 1.6,
      holds: 'The scale goes from',
      when: 'when-reads-index',
    },
    {
      kind: 'figure',
      quantity: 'temperature',
      name: 'sample',
      label: 'Sample is at',
      least: -60,
      most: 150,
      holds: 'A sample lies between',
      isOptional: true,
    },
    {
      kind: 'choice',
      name: 'compensates',
      label: 'It compensates for temperature',
      options: [
        { value: 'no', label: 'No, or nobody knows' },
        { value: 'yes', label: 'Yes' },
      ],
      standing: { value: 'no', how: 'assumed', said: 'Assumed: the instrument says so if it does.' },
    },
  ];
}

function reading({ figures, choices }: ReadForm): { field: string; given: Record<string, number> | undefined } {
  const of = (field: string, key: string): { field: string; given: Record<string, number> | undefined } => {
    const value = figures[field];
    return { field, given: value === undefined ? undefined : { [key]: value } };
  };
  switch (choices['reads'] ?? '') {
    case 'brix':
      return of('brix', 'brix');
    case 'index':
      return of('index', 'refractiveIndex');
    default:
      return of('shows', 'freezingPointC');
  }
}

/** What a refractometer's reading is worth for the glycol that is really in it. */
export const REFRACTOMETER: Tool = {
  key: 'refractometer',
  title: 'Refractometer',
  lead: 'What the reading is worth.',
  rest: 'Propylene glycol on an ethylene scale claims protection that isn’t there.',
  groups: () => plainGroup(fields()),
  cautions: ['handling'],
  reckon: (form, { units }) => {
    const { field, given } = reading(form);
    if (!given) return asks(field);
    const scale = form.choices['scale'];
    const found = refractometer({
      glycol: glycolOf(form),
      ...given,
      scaleGlycol: scale === 'ethylene' || scale === 'propylene' ? scale : undefined,
      sampleC: form.figures['sample'],
      hasTemperatureCompensation: form.choices['compensates'] === 'yes' ? true : undefined,
    });
    const problems = { refractiveIndex: field, freezingPointC: 'shows', brix: 'brix', sampleC: 'sample', '*': field };
    return outcomeOf(found, problems, (result) => {
      const { massPercent, overclaimK } = result;
      const safe = formatFigure(shownProtection(result.freezingPointC, { unit: units.temperature }), 0);
      return {
        headline: `Safe to ${result.isAtLeast ? 'at least ' : ''}${safe} ${units.temperature}.`,
        figures: [
          resultFigure(result.volumePercent, 'percent', { units, word: 'of pure glycol', said: 'by volume' }),
          ...(massPercent === null ? [] : [resultFigure(massPercent, 'massPercent', { units, word: 'of pure glycol' })]),
          textFigure(formatFigure(result.refractiveIndex, 4), '', { word: 'refractive index', said: 'at 20 °C' }),
        ],
        lines:
          overclaimK === null || Math.abs(overclaimK) < 0.05 || result.warnings.some(({ code }) => code === 'wrong-scale')
            ? []
            : [
                `The scale claims ${saidFigure(Math.abs(overclaimK), 'difference', units)} ${overclaimK > 0 ? 'more' : 'less'} than the mixture keeps.`,
              ],
        sure: 'Ethylene glycol by a published table, to 0.0001 of the index. Propylene glycol by an estimate, to about 1 % by mass. A hand instrument reads to about 1 K.',
        assumptions: result.assumptions,
        warnings: result.warnings,
        sources: result.sources,
      };
    });
  },
};
