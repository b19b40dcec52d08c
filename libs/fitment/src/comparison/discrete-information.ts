/**
 * Expected information of an observation about a hypothesis, in bits: the mutual information Σ p(h)·p(y|h)·log₂(p(y|h)/p(y)).
 *
 * Source: Shannon 1948; Cover and Thomas, Elements of Information Theory, 2.3 (from memory).
 *
 * @param prior - probability of each hypothesis
 * @param likelihood - for each hypothesis the probability of each outcome
 * @example discreteInformationBits([0.5, 0.5], [[1, 0], [0, 1]]) // 1
 */
export function discreteInformationBits(prior: readonly number[], likelihood: readonly (readonly number[])[]): number {
  const outcomes = likelihood[0]?.length ?? 0;
  let bits = 0;
  for (let outcome = 0; outcome < outcomes; outcome += 1) {
    const joint = prior.map((probability, index) => probability * (likelihood[index]?.[outcome] ?? 0));
    const marginal = joint.reduce((sum, probability) => sum + probability, 0);
    for (const [index, probability] of joint.entries()) {
      if (probability > 0) bits += probability * Math.log2((likelihood[index]?.[outcome] ?? 0) / marginal);
    }
  }
  return Math.max(0, bits);
}
