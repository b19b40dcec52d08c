import { sawTeeth } from '../describe/fan-cycling.ts';
import { SHARP } from '../knee/choose-knee.ts';
import { type KneeFit } from '../knee/fit-knee.ts';
import { type Findings } from './findings.ts';

/** Fans switch on from about here; a slow climb that ends here and falls was ended by the fan. */
const FAN_FROM_C = 94.5;
const FAN_PULLS_K = 3;
const SAME_HEIGHT_K = 2;
const SLOW_CLIMB_C_PER_S = 0.05;
/** Above this the air helps an engine with an open valve to look sound. */
export const WARM_AIR_C = 20;
const HOT_AIR_C = 30;
const SHARPER_PER_K = 0.15;
/** Without road speed nobody knows when the radiator got its wind; on a warm day only an unmistakable bend counts then. */
const UNMISTAKABLE = 10;

/** Whether a bend can be the valve's work: not the fan's, and clear enough for the weather. */
export function isValvesWork(findings: Findings, knee: KneeFit): boolean {
  return !madeByFan(findings, knee) && knee.sharpness >= neededSharpness(findings);
}

/** An electric fan ends a climb too, in hot air even with a valve that hangs open; the curve then falls and may come back to the same height. */
function madeByFan({ grid, level }: Findings, knee: KneeFit): boolean {
  if (knee.tempC < FAN_FROM_C) return false;
  const pulledDown = level === null || knee.tempC - level.lowC >= FAN_PULLS_K;
  if (pulledDown && knee.rateBeforeCPerS <= SLOW_CLIMB_C_PER_S) return true;
  return sawTeeth(grid, { standingOnly: false }).highs.some((high) => Math.abs(high - knee.tempC) <= SAME_HEIGHT_K);
}

/** The hotter the air, the more an engine with an open valve looks like a sound one, and the clearer the bend has to be. */
function neededSharpness({ grid, air, start }: Findings): number {
  const warmK = Math.max(0, (air.airC ?? HOT_AIR_C) - WARM_AIR_C);
  if (grid.speedKmh || warmK === 0) return SHARP + SHARPER_PER_K * warmK;
  return start.coldStart === false ? Number.POSITIVE_INFINITY : UNMISTAKABLE;
}
