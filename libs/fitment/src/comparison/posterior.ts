/** Probabilities after the readings; together they sum to 1. */
export interface Posterior {
  readonly candidates: readonly number[];
  readonly none: number;
}

/**
 * Bayes' theorem on logarithms, so that many readings don't underflow. Minus infinity stands for impossible or excluded; when
 * everything is, *none of these* is what is left.
 *
 * @param logWeights - ln(prior) + ln(likelihood) of each candidate
 * @param noneLogWeight - the same for *none of these*
 * @example posterior([Math.log(0.2), Math.log(0.6)], Number.NEGATIVE_INFINITY) // { candidates: [0.25, 0.75], none: 0 }
 */
export function posterior(logWeights: readonly number[], noneLogWeight: number): Posterior {
  const highest = Math.max(noneLogWeight, ...logWeights);
  if (highest === Number.NEGATIVE_INFINITY) return { candidates: logWeights.map(() => 0), none: 1 };
  const weights = logWeights.map((logWeight) => Math.exp(logWeight - highest));
  const none = Math.exp(noneLogWeight - highest);
  const total = weights.reduce((sum, weight) => sum + weight, none);
  return { candidates: weights.map((weight) => weight / total), none: none / total };
}
