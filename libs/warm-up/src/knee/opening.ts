import { type Level } from '../describe/settled-level.ts';
import { type KneeFit } from './fit-knee.ts';

/** The temperature at which the valve starts to open, with the range it lies in nineteen times out of twenty in the made-up fleets. */
export interface Opening {
  estimate: number;
  low: number;
  high: number;
}

/** Wax follows the coolant late, so the coolant is already higher when the valve moves: rate × lag. Of the order of 10 to 20 s (from memory). */
const WAX_LAG_S = 9;
/** A valve that holds a level is partly open there: it can't have opened much above that level. */
const ABOVE_LEVEL_K = 0.5;
/** Sensor, rounding and hysteresis together. */
const LEAST_HALF_WIDTH_K = 1.9;
const LAG_DOUBT_S = 7;

/** Turns a knee into an opening temperature: less the wax lag, and no higher than the level it then held allows. */
export function opening(knee: KneeFit, level: Level | null): Opening {
  const behind = knee.rateBeforeCPerS * WAX_LAG_S;
  const byKnee = knee.tempC - behind;
  const byLevel = level ? level.earlyC + ABOVE_LEVEL_K : Number.POSITIVE_INFINITY;
  const estimate = Math.min(byKnee, byLevel);
  const fitHalf = (knee.highC - knee.lowC) / 2;
  const lagHalf = knee.rateBeforeCPerS * LAG_DOUBT_S;
  const half = Math.hypot(LEAST_HALF_WIDTH_K, fitHalf, lagHalf, (byKnee - estimate) / 2);
  return { estimate, low: estimate - half, high: estimate + half };
}
