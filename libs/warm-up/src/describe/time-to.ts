import { type Grid } from '../grid/grid.ts';

/** Seconds from the first reading until `tempC` was reached, on the smoothed curve; null if it never was or the log began above it. */
export function timeTo(grid: Grid, tempC: number): number | null {
  if ((grid.smoothC[0] ?? 0) >= tempC) return null;
  const index = grid.smoothC.findIndex((value) => value >= tempC);
  return index < 0 ? null : (grid.timeS[index] ?? null);
}
