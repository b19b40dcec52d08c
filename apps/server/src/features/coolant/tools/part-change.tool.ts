import { replacement } from '#libs/coolant';
import type { BenchField } from '../form/bench-field.ts';
import { plainGroup } from '../form/field-group.ts';
import { resultFigure } from '../result-figure.ts';
import { saidFigure } from '../units/measure.ts';
import { asks, outcomeOf, type Tool } from './tool.ts';

const SHARE = { kind: 'figure', quantity: 'percent', least: 0, most: 100, holds: 'A share lies between' } as const;

const FIELDS: readonly BenchField[] = [
  { kind: 'figure', quantity: 'volume', name: 'holds', label: 'System holds', least: 0.1, most: 500, holds: 'A system holds' },
  { ...SHARE, name: 'present', label: 'In it now' },
  { ...SHARE, name: 'added', label: 'In what is poured', standing: { value: 0, how: 'assumed', said: 'Assumed: water.' } },
  { ...SHARE, name: 'wanted', label: 'Wanted', hint: 'All three of the same kind: of product, or of pure glycol.' },
];

/** The textbook's part change: how much to drain and replace. */
export const PART_CHANGE: Tool = {
  key: 'part-change',
  title: 'Part change',
  lead: 'How much to drain and replace, by plain volumes.',
  rest: 'The textbook sum, for a quick look. The refill reckons by mass and says more.',
  groups: () => plainGroup(FIELDS),
  cautions: ['opening', 'waste'],
  reckon: ({ figures }, { units }) => {
    const { holds, present, added = 0, wanted } = figures;
    if (holds === undefined) return asks('holds');
    if (present === undefined) return asks('present');
    if (wanted === undefined) return asks('wanted');
    const found = replacement({ systemVolume: holds, presentPercent: present, addedPercent: added, targetPercent: wanted });
    const fields = { systemVolume: 'holds', presentPercent: 'present', addedPercent: 'added', targetPercent: 'wanted', '*': 'wanted' };
    return outcomeOf(found, fields, ({ drainVolume, assumptions, warnings, sources }) => ({
      headline: `Drain ${saidFigure(drainVolume, 'volume', units)} and pour as much.`,
      figures: [resultFigure(drainVolume, 'volume', { units, word: 'out, and in again' })],
      lines: [],
      sure: 'Plain volumes: the shrink on mixing, up to 1.3 % with ethylene and 2.1 % with propylene glycol, is left out.',
      assumptions,
      warnings,
      sources,
    }));
  },
};
