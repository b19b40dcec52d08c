import { sawTeeth } from '../describe/fan-cycling.ts';
import { SHARP } from '../knee/choose-knee.ts';
import { type KneeFit } from '../knee/fit-knee.ts';
import { type Findings } from './findings.ts';

/** Fans switch on from about here; a slow climb that ends here and falls was ended by the fan. */
const FAN_FROM_C = 94.5;
const FAN_PULLS_K = 3;
const BELOW_TEETH_K = 1;
const ABOVE_TEETH_K = 2;
const SLOW_CLIMB_C_PER_S = 0.05;
/** Above this the air helps an engine with an open valve to look sound. */
export const WARM_AIR_C = 20;
const HOT_AIR_C = 30;
const SHARPER_PER_K = 0.15;
/** Without road speed nobody knows when the radiator got its wind; on a warm day only an unmistakable bend counts then. */
const UNMISTAKABLE = 10;
const FALLS_BACK_K = 4;

/** Whether a bend can be the valve's work: not the fan's, and clear enough for the weather. */
export function isValvesWork(findings: Findings, knee: KneeFit): boolean {
  return !madeByFan(findings, knee) && knee.sharpness >= neededSharpness(findings, knee);
}

/**
 * An electric fan ends a climb too, in hot air even with a valve that hangs open: the curve then falls at once, or the bend lies within the
 * saw-teeth that the fan goes on making.
 */
function madeByFan({ grid, level }: Findings, knee: KneeFit): boolean {
  const { highs, lows } = sawTeeth(grid, { standingOnly: false });
  const within = highs.some((high, tooth) => {
    const low = lows[tooth] ?? high;
    return high >= FAN_FROM_C && knee.tempC >= low - BELOW_TEETH_K && knee.tempC <= high + ABOVE_TEETH_K;
  });
  if (within) return true;
  const pulledDown = level === null || knee.tempC - level.lowC >= FAN_PULLS_K;
  return knee.tempC >= FAN_FROM_C && pulledDown && knee.rateBeforeCPerS <= SLOW_CLIMB_C_PER_S;
}

/** The hotter the air, the more an engine with an open valve looks like a sound one, and the clearer the bend has to be. */
function neededSharpness({ grid, air, start, level }: Findings, knee: KneeFit): number {
  const warmK = Math.max(0, (air.airC ?? HOT_AIR_C) - WARM_AIR_C);
  if (grid.speedKmh || warmK === 0) return SHARP + SHARPER_PER_K * warmK;
  const fallsBack = level !== null && knee.tempC - level.earlyC > FALLS_BACK_K;
  return start.coldStart === false || fallsBack ? Number.POSITIVE_INFINITY : UNMISTAKABLE;
}
