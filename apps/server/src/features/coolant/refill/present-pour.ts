import { jugs as drawJugs } from '#libs/charts';
import type { UnitPreference } from '#libs/units';
import { drawn, type DrawnView } from '../drawn.ts';
import { measureOf, plainFigure } from '../units/measure.ts';
import { jugsOf, type JugSize, type Liquid } from './liquids.ts';

/** One liquid with its jugs, in its turn. */
export interface PourView {
  readonly amount: string;
  readonly unit: string;
  readonly what: string;
  readonly exact: string;
  readonly drawing: DrawnView;
}

/** As wide as the jugs of one row need, so that none is blown up. */
export const jugsWidthPx = (count: number, most: number): number => Math.max(200, 62 + 128 * Math.min(Math.max(1, count), most));

/** One liquid as the page shows it: the amount, and the jugs with their fill lines. */
export function presentPour(liquid: Liquid, size: JugSize, units: UnitPreference): PourView {
  const { unit, decimals, shown } = measureOf('volume', units);
  const count = liquid.amountsMl.length;
  return {
    amount: plainFigure(shown(liquid.totalL), decimals),
    unit,
    what: liquid.what,
    exact: `exactly ${shown(liquid.exactL).toFixed(3)} ${unit}`,
    drawing: drawn(`jugs-${liquid.key}`, { wide: jugsWidthPx(count, 3), narrow: jugsWidthPx(count, 2) }, (options) =>
      drawJugs(jugsOf(liquid, size, units), { ...options, ground: 'sheet' }),
    ),
  };
}
