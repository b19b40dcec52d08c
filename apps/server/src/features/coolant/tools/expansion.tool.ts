import { expansion, type TankSpace } from '#libs/coolant';
import type { BenchField } from '../form/bench-field.ts';
import { plainGroup } from '../form/field-group.ts';
import { glycolOf } from '../form/glycol-field.ts';
import { resultFigure } from '../result-figure.ts';
import { saidFigure } from '../units/measure.ts';
import { STRENGTH_PROBLEMS, strengthField, strengthFields, strengthOf } from './strength-fields.ts';
import { asks, outcomeOf, type Tool } from './tool.ts';

const TANK: Readonly<Record<TankSpace['verdict'], string>> = {
  enough: 'The tank takes it.',
  unsure: 'The published figures leave open whether the tank takes it.',
  'too-small': 'The tank is too small.',
};

function ownFields(): readonly BenchField[] {
  const temperature = { kind: 'figure', quantity: 'temperature', least: -40, most: 100, holds: 'Published figures go from' } as const;
  return [
    { kind: 'figure', quantity: 'volume', name: 'holds', label: 'System holds', least: 0.1, most: 500, holds: 'A system holds' },
    { ...temperature, name: 'from', label: 'Cold at', standing: { value: 20, how: 'assumed', said: 'Assumed: a mild morning.' } },
    { ...temperature, name: 'to', label: 'Hot at', standing: { value: 95, how: 'assumed', said: 'Assumed: warm, fan running.' } },
    {
      kind: 'figure',
      quantity: 'volume',
      name: 'space',
      label: 'Free above the cold mark',
      least: 0,
      most: 100,
      holds: 'A tank has',
      isOptional: true,
    },
  ];
}

/** How much it grows from cold to hot, and whether the tank takes it. */
export const EXPANSION: Tool = {
  key: 'expansion',
  title: 'Expansion',
  lead: 'How much it grows from cold to hot.',
  rest: 'And whether the space above the cold mark takes it.',
  groups: () => plainGroup([...strengthFields(), ...ownFields()]),
  cautions: ['opening'],
  reckon: (form, { units }) => {
    const strength = strengthOf(form);
    if (!strength) return asks(strengthField(form));
    const { holds, from = 20, to = 95, space } = form.figures;
    if (holds === undefined) return asks('holds');
    const found = expansion({ glycol: glycolOf(form), ...strength, volumeL: holds, fromC: from, toC: to, tankSpaceL: space });
    const fields = { ...STRENGTH_PROBLEMS, volumeL: 'holds', fromC: 'from', toC: 'to', tankSpaceL: 'space' };
    return outcomeOf(found, fields, (result) => ({
      headline: `Grows by ${saidFigure(result.expansionL, 'volume', units)}. ${result.tank ? TANK[result.tank.verdict] : ''}`.trim(),
      figures: [
        resultFigure(result.expansionL, 'volume', { units, word: 'more when hot' }),
        resultFigure(result.expansionPercent, 'percent', {
          units,
          word: 'of what it holds',
          said: `± ${result.uncertaintyPercent} points`,
        }),
        ...(result.tank
          ? [resultFigure(result.tank.spareL, 'volume', { units, word: 'left in the tank', said: 'below nothing: pushed out' })]
          : []),
      ],
      lines: [],
      sure: `Two published densities, the larger growth is told: ± ${result.uncertaintyPercent} percentage points.`,
      assumptions: result.assumptions,
      warnings: result.warnings,
      sources: result.sources,
    }));
  },
};
