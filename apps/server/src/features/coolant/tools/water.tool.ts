import { WATER_LIMITS, waterQuality, type WaterItem } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import type { BenchField } from '../form/bench-field.ts';
import { plainGroup } from '../form/field-group.ts';
import { outcomeOf, type Tool } from './tool.ts';

const VERDICTS: Readonly<Record<WaterItem['verdict'], string>> = { within: 'within', outside: 'outside', 'not-known': 'not known' };

const FIELDS: readonly BenchField[] = [
  {
    kind: 'choice',
    name: 'kind',
    label: 'Water',
    options: [
      { value: 'demineralised', label: 'Demineralised or distilled, closed container' },
      { value: 'other', label: 'Other: by its figures' },
    ],
    standing: { value: 'demineralised', how: 'known', said: '' },
  },
  ...WATER_LIMITS.map(({ key, name, most, least }): BenchField => ({
    kind: 'figure',
    quantity: key === 'pH' ? 'bare' : 'perLitre',
    name: key,
    label: name,
    least: 0,
    most: key === 'pH' ? 14 : 100_000,
    holds: 'It lies between',
    isOptional: true,
    hint: least === null ? `At most ${most} mg/L.` : `${least} to ${most}.`,
    when: 'when-kind-other',
  })),
];

/** Whether this water will do. */
export const WATER: Tool = {
  key: 'water',
  title: 'Water',
  lead: 'Which water will do for mixing.',
  rest: 'Demineralised water needs no figures; of tap water the water company knows them.',
  groups: () => plainGroup(FIELDS),
  cautions: [],
  reckon: ({ figures, choices }) => {
    const isOther = choices['kind'] === 'other';
    const { chlorideMgL, sulfateMgL, hardnessMgL, dissolvedSolidsMgL, pH } = isOther ? figures : {};
    const found = waterQuality({ chlorideMgL, sulfateMgL, hardnessMgL, dissolvedSolidsMgL, pH, isDemineralised: !isOther });
    return outcomeOf(found, {}, (result) => ({
      headline: result.text,
      figures: [],
      lines: [],
      table: {
        caption: 'Limits',
        head: ['of the water', 'found', 'allowed', 'verdict'],
        rows: result.items.map(({ name, unit, value, least, most, verdict }) => ({
          name,
          cells: [
            value === null ? 'not known' : `${formatFigure(value, 1)} ${unit}`.trim(),
            `${least === null ? 'at most' : `${formatFigure(least, 1)} to`} ${formatFigure(most, least === null ? 0 : 1)} ${unit}`.trim(),
            VERDICTS[verdict],
          ],
        })),
      },
      sure: 'Limits as an equipment maker prints them; the same chloride, sulphate and hardness are quoted from a published standard.',
      assumptions: result.assumptions,
      warnings: result.verdict === 'unsuitable' ? [] : result.warnings,
      sources: result.sources,
    }));
  },
};
