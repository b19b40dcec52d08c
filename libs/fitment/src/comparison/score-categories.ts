import { categoryModel, readingProbability } from './category-model.ts';
import { type ComparisonCandidate, type FeatureValue } from './comparison.types.ts';
import { type FeatureEvidence } from './feature-evidence.ts';
import { type FeatureScores, type Score } from './score.types.ts';
import { statedValue } from './stated-value.ts';

/**
 * Scores the readings of a category feature: 1 − misreading rate when it is what the candidate states, the rate shared among
 * the others when not, equal for a candidate that states none and for *none of these*.
 *
 * @param evidence - with at least one reading
 * @param candidates - all of them
 */
export function scoreCategories({ feature, categories }: FeatureEvidence, candidates: readonly ComparisonCandidate[]): FeatureScores {
  const model = categoryModel(feature, candidates, { read: categories });
  const logLikelihoodOf = (stated: FeatureValue | undefined): number =>
    categories.reduce<number>((sum, read) => sum + Math.log(readingProbability(model, read, { stated })), 0);
  const scores = candidates.map((candidate): Score => {
    const stated = statedValue(candidate, feature.key);
    const logLikelihood = logLikelihoodOf(stated);
    if (stated === undefined) return { verdict: 'not-proven', logLikelihood, note: 'not-stated' };
    return { verdict: categories.every((read) => read === stated) ? 'conforms' : 'does-not-conform', logLikelihood };
  });
  return { key: feature.key, scores, noneLogLikelihood: logLikelihoodOf(undefined) };
}
