import { type Grid } from '../grid/grid.ts';

/** Climbing has stopped where the next three minutes bring no more than this. */
const LOOK_AHEAD_S = 180;
const STILL_CLIMBING_K = 0.7;
const LEAST_RISE_K = 12;
const APART_K = 3;

/**
 * Places where the temperature stops climbing for a while: a thermostat opening, but also a slow stretch of road or an engine that has
 * found its balance. Each is looked at as a possible knee. Steps of the grid, rising.
 */
export function findTops(grid: Grid): number[] {
  const { smoothC, size, stepS } = grid;
  const ahead = Math.max(2, Math.round(LOOK_AHEAD_S / stepS));
  const highest = highestAhead(smoothC, ahead);
  const tops: number[] = [];
  let lowest = smoothC[0] ?? 0;
  let lastTopC = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < size - 2; index += 1) {
    const nowC = smoothC[index] ?? 0;
    lowest = Math.min(lowest, nowC);
    if (nowC < lowest + LEAST_RISE_K || nowC < lastTopC + APART_K) continue;
    if ((highest[index] ?? 0) - nowC > STILL_CLIMBING_K) continue;
    tops.push(index);
    lastTopC = nowC;
  }
  return tops;
}

/** Highest value within the next `reach` steps, by a falling queue of candidates. */
function highestAhead(values: Float64Array, reach: number): Float64Array {
  const out = new Float64Array(values.length);
  const queue: number[] = [];
  let head = 0;
  for (let index = values.length - 1; index >= 0; index -= 1) {
    while (queue.length > head && (values[queue[queue.length - 1] ?? 0] ?? 0) <= (values[index] ?? 0)) queue.pop();
    queue.push(index);
    while ((queue[head] ?? 0) > index + reach) head += 1;
    out[index] = values[queue[head] ?? index] ?? 0;
  }
  return out;
}
