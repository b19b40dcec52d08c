import { type ComparisonCandidate } from './comparison.types.ts';

/**
 * Priors scaled to 1 − nonePrior. A missing one gets an equal share: the mean of those given.
 *
 * @param candidates - with priors on any scale, not all 0
 * @param nonePrior - what is kept for *none of these*
 * @example scaledPriors([{ id: 'A', prior: 8, values: {} }, { id: 'B', prior: 2, values: {} }], 0) // [0.8, 0.2]
 */
export function scaledPriors(candidates: readonly ComparisonCandidate[], nonePrior: number): number[] {
  const given = candidates.flatMap(({ prior }) => (prior === undefined ? [] : [prior]));
  const sumGiven = given.reduce((sum, prior) => sum + prior, 0);
  const missing = sumGiven > 0 ? sumGiven / given.length : 1;
  const weights = candidates.map(({ prior }) => prior ?? missing);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => ((1 - nonePrior) * weight) / total);
}
