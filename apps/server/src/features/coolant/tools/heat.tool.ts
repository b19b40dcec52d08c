import { heatCarrying, type HeatCarryingRow } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import type { BenchField } from '../form/bench-field.ts';
import { plainGroup } from '../form/field-group.ts';
import { glycolOf } from '../form/glycol-field.ts';
import { resultFigure } from '../result-figure.ts';
import { STRENGTH_PROBLEMS, strengthField, strengthFields, strengthOf } from './strength-fields.ts';
import { asks, outcomeOf, type Tool } from './tool.ts';

const NAMES: Readonly<Record<HeatCarryingRow['fluid'], string>> = {
  water: 'Plain water',
  'half-and-half': '50 % of pure glycol',
  'this-mixture': 'This mixture',
};

const percent = (ratio: number): string => `${formatFigure(ratio * 100, 0)} %`;

const HOT: BenchField = {
  kind: 'figure',
  quantity: 'temperature',
  name: 'at',
  label: 'Compared at',
  least: -40,
  most: 100,
  holds: 'Published figures go from',
  standing: { value: 80, how: 'assumed', said: 'Assumed: a warm engine.' },
};

/** Why stronger is not better. */
export const HEAT: Tool = {
  key: 'heat',
  title: 'Heat carrying',
  lead: 'Why stronger is not better.',
  rest: 'What a litre carries, how thick it is, and how well it passes heat on, beside water and beside 50 %.',
  groups: () => plainGroup([...strengthFields(), HOT]),
  cautions: [],
  reckon: (form, { units }) => {
    const strength = strengthOf(form);
    if (!strength) return asks(strengthField(form));
    const found = heatCarrying({ glycol: glycolOf(form), ...strength, tempC: form.figures['at'] });
    return outcomeOf(found, { ...STRENGTH_PROBLEMS, tempC: 'at' }, (result) => {
      const own = result.rows.find(({ fluid }) => fluid === 'this-mixture');
      const heat = own?.heatPerLitreRatio ?? 1;
      return {
        headline: `Carries ${percent(heat)} of what water carries.`,
        figures: own
          ? [
              resultFigure(own.heatPerLitreRatio * 100, 'percent', { units, decimals: 0, word: 'of water’s heat', said: 'to the litre' }),
              resultFigure(own.viscosityRatio, 'bare', { units, decimals: 1, word: 'times as thick', said: 'as water' }),
              resultFigure(own.heatPassingRatio * 100, 'percent', {
                units,
                decimals: 0,
                word: 'of water’s passing on',
                said: 'at the same flow',
              }),
            ]
          : [],
        lines: [],
        table: {
          caption: 'Beside water and 50 %',
          head: ['fluid', 'kJ/(L·K)', 'of water', 'mPa·s', 'times water', 'heat passed on'],
          rows: result.rows.map((row) => ({
            name: NAMES[row.fluid],
            cells: [
              formatFigure(row.heatPerLitreKJPerK, 2),
              percent(row.heatPerLitreRatio),
              formatFigure(row.viscosityMPaS, 2),
              formatFigure(row.viscosityRatio, 1),
              percent(row.heatPassingRatio),
            ],
          })),
        },
        sure: 'Two published tables differ by up to 5 % in heat capacity, 8.5 % in conductivity and 20 % in viscosity.',
        assumptions: result.assumptions,
        warnings: result.warnings,
        sources: result.sources,
      };
    });
  },
};
