import { categoryModel, readingProbability } from './category-model.ts';
import { type ComparisonCandidate, type ComparisonFeature, type FeatureValue } from './comparison.types.ts';
import { discreteInformationBits } from './discrete-information.ts';
import { mixtureInformationBits, type NormalPart } from './mixture-information.ts';
import { broadRange, readingSpread } from './number-spread.ts';
import { type PooledReading } from './pool-readings.ts';
import { type Posterior } from './posterior.ts';
import { statedValue } from './stated-value.ts';

/**
 * Bits that a first reading of a feature is expected to give about which candidate is right, with the best instrument in the
 * shop.
 *
 * @param feature - not read so far
 * @param candidates - all of them
 * @param now - their probabilities at present
 */
export function firstReadingBits(
  feature: ComparisonFeature,
  candidates: readonly ComparisonCandidate[],
  { now }: { readonly now: Posterior },
): number {
  return feature.kind === 'category' ? categoryBits(feature, candidates, { now }) : numberBits(feature, candidates, { now });
}

function categoryBits(
  feature: ComparisonFeature,
  candidates: readonly ComparisonCandidate[],
  { now }: { readonly now: Posterior },
): number {
  const model = categoryModel(feature, candidates, { read: [] });
  const unnamed = Array.from<undefined>({ length: model.count - model.named.length });
  const outcomes: (FeatureValue | undefined)[] = [...model.named, ...unnamed];
  const hypotheses: (FeatureValue | undefined)[] = [...candidates.map((candidate) => statedValue(candidate, feature.key)), undefined];
  const likelihood = hypotheses.map((stated) => outcomes.map((read) => readingProbability(model, read, { stated })));
  return discreteInformationBits([...now.candidates, now.none], likelihood);
}

function numberBits(feature: ComparisonFeature, candidates: readonly ComparisonCandidate[], { now }: { readonly now: Posterior }): number {
  const { tolerance = 0, standardUncertainty = 0 } = feature;
  const range = broadRange(feature, candidates, { standardUncertainty });
  if (range === null) return 0;
  const { normals, unstated } = sortByFigure(feature, candidates, { now });
  const parts = normals.map(({ mean, weight }) => ({
    mean,
    weight,
    deviation: readingSpread({ nominal: mean, tolerance, standardUncertainty }),
  }));
  return mixtureInformationBits({ normals: parts, uniform: { weight: unstated, low: range.low, high: range.high } });
}

/**
 * Bits that reading a number again, with a better instrument, is expected to give. What is known of this very part from the
 * first reading is allowed for: the part's figure given a candidate is normal with the combined mean and variance of the
 * candidate's tolerance and the first reading.
 *
 * @param feature - read once already
 * @param candidates - all of them
 * @param context - present probabilities and the reading made
 */
export function repeatedReadingBits(
  feature: ComparisonFeature,
  candidates: readonly ComparisonCandidate[],
  { now, reading }: { readonly now: Posterior; readonly reading: PooledReading },
): number {
  const { tolerance = 0, standardUncertainty = 0 } = feature;
  const partVariance = tolerance ** 2 / 3;
  const readVariance = reading.standardUncertainty ** 2;
  const { normals, unstated } = sortByFigure(feature, candidates, { now });
  const parts = normals.map(({ mean, weight }): NormalPart => {
    const share = partVariance === 0 ? 0 : partVariance / (partVariance + readVariance);
    const deviation = Math.sqrt(share * readVariance + standardUncertainty ** 2);
    const nominal = mean + share * (reading.value - mean);
    return { weight, mean: nominal, deviation: readingSpread({ nominal, tolerance: 0, standardUncertainty: deviation }) };
  });
  const unknown = { weight: unstated, mean: reading.value, deviation: Math.hypot(reading.standardUncertainty, standardUncertainty) };
  const normalsAgain = unstated > 0 ? [...parts, unknown] : parts;
  return mixtureInformationBits({ normals: normalsAgain, uniform: { weight: 0, low: 0, high: 1 } });
}

/** Candidates of the same figure count together; so do those that state none, with *none of these*. */
function sortByFigure(
  feature: ComparisonFeature,
  candidates: readonly ComparisonCandidate[],
  { now }: { readonly now: Posterior },
): { normals: { mean: number; weight: number }[]; unstated: number } {
  const weights = new Map<number, number>();
  let unstated = now.none;
  for (const [index, candidate] of candidates.entries()) {
    const probability = now.candidates[index] ?? 0;
    const value = statedValue(candidate, feature.key);
    if (typeof value !== 'number') unstated += probability;
    else if (probability > 0) weights.set(value, (weights.get(value) ?? 0) + probability);
  }
  return { normals: [...weights].map(([mean, weight]) => ({ mean, weight })), unstated };
}
