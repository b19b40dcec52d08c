/** Enough halvings to reach the last digit of any bracket used here; a root at zero would go on for ten times as many. */
const MOST_HALVINGS = 100;

/**
 * Where an increasing function reaches a value, to the last digit, by halving.
 *
 * Chosen over faster methods because it can't leave its bracket, and the functions here cost nanoseconds.
 *
 * @param increasing The function, increasing between the bounds
 * @param value The value to reach; outside the function's range the nearer bound is returned
 * @param bounds Lower and upper bound of the search
 * @example bisect((x) => x * x, 2, { low: 0, high: 2 }) // 1.414213562373095
 */
export function bisect(increasing: (x: number) => number, value: number, bounds: { low: number; high: number }): number {
  let { low, high } = bounds;
  for (let halving = 0; halving < MOST_HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (increasing(middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
