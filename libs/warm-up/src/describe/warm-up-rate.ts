import { type Grid } from '../grid/grid.ts';

const LEAST_RISE_K = 10;
/** The middle of the climb: the first degrees wait for the block, the last ones bend. */
const FROM_SHARE = 0.1;
const TO_SHARE = 0.85;

/** °C per minute over the middle of the climb that ends at `topC`; null when the log climbs less than 10 °C. */
export function warmUpRate(grid: Grid, topC: number): number | null {
  const startC = grid.smoothC[0] ?? 0;
  const riseK = topC - startC;
  if (riseK < LEAST_RISE_K) return null;
  const from = firstAt(grid, startC + FROM_SHARE * riseK);
  const to = firstAt(grid, startC + TO_SHARE * riseK);
  const minutes = ((to - from) * grid.stepS) / 60;
  return minutes > 0 ? ((grid.smoothC[to] ?? 0) - (grid.smoothC[from] ?? 0)) / minutes : null;
}

function firstAt(grid: Grid, tempC: number): number {
  const index = grid.smoothC.findIndex((value) => value >= tempC);
  return index < 0 ? grid.size - 1 : index;
}
