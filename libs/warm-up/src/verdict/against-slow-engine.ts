import { type KneeFit } from '../knee/fit-knee.ts';
import { slowHealthyCurve } from '../model/slow-healthy-curve.ts';
import { type Findings } from './findings.ts';
import { VERY_SHARP } from './sureness.ts';

const NEAR_KNEE_K = 4;
const WELL_PAST_K = 8;

/** How much colder than a slow sound engine it was when the bend came; a tight valve is never far behind that one. */
export function behindSlowEngineK({ grid, air, heater }: Findings, knee: KneeFit): number {
  if (air.airC === null || grid.heatFrom === 'time') return 0;
  const at = Math.max(0, Math.floor(knee.timeS / grid.stepS) - 1);
  return (slowHealthyCurve(grid, { airC: air.airC, heater, engine: 'slow' })[at] ?? 0) - (grid.smoothC[at] ?? 0);
}

/** Whether heat was there to carry even a slow engine well past the level: without that, a heater may hold an engine down as evenly. */
export function wouldHaveGoneOn({ grid, air, heater, level }: Findings, knee: KneeFit): boolean {
  if (air.airC === null || grid.heatFrom === 'time' || !level || Math.abs(level.levelC - knee.tempC) > NEAR_KNEE_K) return false;
  const slowC = slowHealthyCurve(grid, { airC: air.airC, heater, engine: 'slow' })[grid.size - 1] ?? 0;
  return knee.sharpness >= VERY_SHARP && slowC >= level.levelC + WELL_PAST_K;
}
