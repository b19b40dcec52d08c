import { type Grid } from './grid.ts';
import { quantile } from './quantile.ts';

/** Where the outside air temperature came from. */
export interface Air {
  airC: number | null;
  from: 'ambient sensor' | 'intake sensor' | 'coolant at the start' | 'not known';
  /** Ambient and intake disagree by more than any engine bay explains. */
  sensorsDisagree: boolean;
}

const DISAGREE_K = 25;
const COLD_START_AT_MOST_C = 40;

/**
 * The air the engine loses its heat to. An intake sensor sits in a warm engine bay and can only read too high, so its coolest tenth counts,
 * or the coolant's own cold start where that was cooler. An ambient sensor far from an intake at which the coolant started is taken for
 * broken.
 */
export function airTemperature(grid: Grid): Air {
  const intakeC = grid.intakeC ? quantile(grid.intakeC, 0.1) : null;
  const ambientC = grid.ambientC ? quantile(grid.ambientC, 0.5) : null;
  const startC = grid.smoothC[0] ?? 0;
  const startsCold = startC < COLD_START_AT_MOST_C;
  const sensorsDisagree = ambientC !== null && intakeC !== null && Math.abs(intakeC - ambientC) > DISAGREE_K;
  const ambientIsBroken = sensorsDisagree && Math.abs(startC - intakeC) < Math.abs(startC - ambientC);
  if (ambientC !== null && !ambientIsBroken) return { airC: ambientC, from: 'ambient sensor', sensorsDisagree };
  if (startsCold && startC < (intakeC ?? Number.POSITIVE_INFINITY)) return { airC: startC, from: 'coolant at the start', sensorsDisagree };
  if (intakeC !== null) return { airC: intakeC, from: 'intake sensor', sensorsDisagree };
  return { airC: null, from: 'not known', sensorsDisagree };
}
