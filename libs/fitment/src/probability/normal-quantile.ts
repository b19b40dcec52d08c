import { normalCdf } from './normal-cdf.ts';

const SEARCH_LIMIT = 40;
const HALVINGS = 80;

/**
 * The value that a standard normal variable stays below with a given probability: the inverse of {@link normalCdf}, by
 * halving.
 *
 * @param probability - above 0 and below 1
 * @throws RangeError outside that
 * @example normalQuantile(0.975) // 1.959963984540054…
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError('A quantile needs a probability above 0 and below 1.');
  if (probability > 0.5) return -normalQuantile(1 - probability);
  let low = -SEARCH_LIMIT;
  let high = 0;
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (normalCdf(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
