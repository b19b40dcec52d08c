import { type Grid } from '../grid/grid.ts';

const AROUND_KNEE_S = { before: 30, after: 300 };

/**
 * The highest point in the first minutes after the climb ended. Where the valve lags behind it lies degrees above the level that follows:
 * it is reported beside the plateau, never as the opening temperature.
 */
export function firstPeak(grid: Grid, kneeS: number | null): number | null {
  if (kneeS === null) return null;
  let peakC: number | null = null;
  for (let index = 0; index < grid.size; index += 1) {
    const timeS = grid.timeS[index] ?? 0;
    if (timeS < kneeS - AROUND_KNEE_S.before || timeS > kneeS + AROUND_KNEE_S.after) continue;
    peakC = Math.max(peakC ?? Number.NEGATIVE_INFINITY, grid.coolantC[index] ?? 0);
  }
  return peakC;
}
