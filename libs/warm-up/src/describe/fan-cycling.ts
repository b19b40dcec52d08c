import { type Grid } from '../grid/grid.ts';
import { type FanCycling } from '../types/analysis.ts';

const STANDING_KMH = 8;
const SWING_K = 3;
const LOWEST_HIGH_C = 88;
/** A fan pulls the coolant down faster than it climbs up at idle. */
const LONGEST_FALL_S = 240;

/** Counts saw-teeth at standstill: up to the fan's switch, quickly down, up again. Null when there is none. */
export function fanCycling(grid: Grid): FanCycling | null {
  const { highs, lows } = sawTeeth(grid, { standingOnly: true });
  if (highs.length === 0) return null;
  const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  return { cycles: highs.length, highC: mean(highs), lowC: mean(lows) };
}

/** Highs and lows of the saw-teeth, in order; with `standingOnly` only those made at standstill. */
export function sawTeeth(
  { smoothC, speedKmh, size, stepS }: Grid,
  { standingOnly }: { standingOnly: boolean },
): { highs: number[]; lows: number[] } {
  const highs: number[] = [];
  const lows: number[] = [];
  let highAt = 0;
  let lowAt = 0;
  let falling = false;
  for (let index = 1; index < size; index += 1) {
    if (standingOnly && speedKmh && (speedKmh[index] ?? 0) > STANDING_KMH) {
      highAt = index;
      lowAt = index;
      falling = false;
      continue;
    }
    const value = smoothC[index] ?? 0;
    if (!falling && value > (smoothC[highAt] ?? 0)) highAt = index;
    if (falling && value < (smoothC[lowAt] ?? 0)) lowAt = index;
    if (!falling && value < (smoothC[highAt] ?? 0) - SWING_K) {
      if ((smoothC[highAt] ?? 0) < LOWEST_HIGH_C || (index - highAt) * stepS > LONGEST_FALL_S) highAt = index;
      else {
        falling = true;
        lowAt = index;
      }
    }
    if (falling && value > (smoothC[lowAt] ?? 0) + SWING_K) {
      highs.push(smoothC[highAt] ?? 0);
      lows.push(smoothC[lowAt] ?? 0);
      falling = false;
      highAt = index;
    }
  }
  return { highs, lows };
}
