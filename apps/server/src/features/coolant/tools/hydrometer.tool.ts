import { hydrometer, shownProtection } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import type { BenchField } from '../form/bench-field.ts';
import { plainGroup } from '../form/field-group.ts';
import { glycolField, glycolOf } from '../form/glycol-field.ts';
import { resultFigure, textFigure } from '../result-figure.ts';
import { asks, outcomeOf, type Tool } from './tool.ts';

function fields(): readonly BenchField[] {
  const temperature = { kind: 'figure', quantity: 'temperature', least: 0, most: 60, holds: 'Published figures go from' } as const;
  return [
    glycolField(),
    { kind: 'figure', quantity: 'bare', name: 'gravity', label: 'Gravity', least: 0.8, most: 1.3, holds: 'A float shows' },
    { ...temperature, name: 'sample', label: 'Sample is at', standing: { value: 20, how: 'assumed', said: 'Assumed: measure it.' } },
    {
      ...temperature,
      name: 'reference',
      label: 'Scale is made for water at',
      standing: { value: 20, how: 'assumed', said: 'Assumed: it stands on the float.' },
    },
    {
      kind: 'figure',
      quantity: 'bare',
      name: 'fineness',
      label: 'Scale can be read to',
      least: 0,
      most: 0.02,
      holds: 'Floats are read to',
      standing: { value: 0.002, how: 'assumed', said: 'Assumed: a workshop float.' },
    },
  ];
}

/** Strength from a float, with the band that it leaves open. */
export const HYDROMETER: Tool = {
  key: 'hydrometer',
  title: 'Hydrometer',
  lead: 'What the float tells, and what it leaves open.',
  rest: 'The sample’s temperature counts; propylene glycol weighs so little more than water that a float tells little.',
  groups: () => plainGroup(fields()),
  cautions: ['handling'],
  reckon: (form, { units }) => {
    const { gravity, sample, reference, fineness } = form.figures;
    if (gravity === undefined) return asks('gravity');
    const found = hydrometer({
      glycol: glycolOf(form),
      specificGravity: gravity,
      sampleC: form.states['sample'] === 'assumed' ? undefined : sample,
      referenceC: form.states['reference'] === 'assumed' ? undefined : reference,
      gravityUncertainty: fineness,
    });
    const problems = { specificGravity: 'gravity', sampleC: 'sample', referenceC: 'reference', gravityUncertainty: 'fineness' };
    return outcomeOf(found, problems, (result) => {
      const safe = formatFigure(shownProtection(result.warmestFreezingPointC, { unit: units.temperature }), 0);
      return {
        headline: `Safe to ${safe} ${units.temperature}, the weakest that the float leaves open.`,
        figures: [
          resultFigure(result.volumePercent, 'percent', { units, word: 'of pure glycol', said: 'by volume' }),
          textFigure(`${formatFigure(result.volumePercentLow, 1)} to ${formatFigure(result.volumePercentHigh, 1)}`, '%', {
            word: 'left open',
            said: 'by the scale’s fineness',
          }),
          resultFigure(result.freezingPointC, 'temperature', { units, word: 'first ice', said: 'by the middle figure' }),
        ],
        lines: [],
        sure: 'By the mixture’s published density; two published tables differ by 1.3 % for ethylene and 0.9 % for propylene glycol.',
        assumptions: result.assumptions,
        warnings: result.warnings,
        sources: result.sources,
      };
    });
  },
};
