import { normalCdf } from './normal-cdf.ts';

/**
 * Probability that a standard normal value lies between two bounds, taken from the tail where that loses no digits.
 *
 * @param low - lower bound, deviations
 * @param high - upper bound, deviations; not below `low`
 * @example normalInterval(-1.96, 1.96) // 0.9500042…
 */
export function normalInterval(low: number, high: number): number {
  const probability = low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
  return Math.min(1, Math.max(0, probability));
}
