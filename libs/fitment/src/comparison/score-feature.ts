import { type ComparisonCandidate } from './comparison.types.ts';
import { type FeatureEvidence } from './feature-evidence.ts';
import { scoreCategories } from './score-categories.ts';
import { scoreNumbers } from './score-numbers.ts';
import { type FeatureScores } from './score.types.ts';

/**
 * Scores one feature for every candidate; without a reading it says nothing about any.
 *
 * @param evidence - the feature and what was read of it
 * @param candidates - all of them
 */
export function scoreFeature(evidence: FeatureEvidence, candidates: readonly ComparisonCandidate[]): FeatureScores {
  const { feature, missing } = evidence;
  if (missing !== undefined) {
    const scores = candidates.map(() => ({ verdict: 'not-proven' as const, logLikelihood: 0, note: missing }));
    return { key: feature.key, scores, noneLogLikelihood: 0 };
  }
  return feature.kind === 'number' ? scoreNumbers(evidence, candidates) : scoreCategories(evidence, candidates);
}
