import { candidateStanding, type CandidateStanding } from './candidate-standing.ts';
import { checkComparison } from './check-comparison.ts';
import { comparisonWarnings } from './comparison-warnings.ts';
import { type ComparisonAnswer, type ComparisonQuestion, type FeatureFinding, type RankedCandidate } from './comparison.types.ts';
import { featureEvidence } from './feature-evidence.ts';
import { nextReading } from './next-reading.ts';
import { posterior } from './posterior.ts';
import { samePartGroups } from './same-part-groups.ts';
import { scaledPriors } from './scaled-priors.ts';
import { scoreFeature } from './score-feature.ts';
import { type FeatureScores } from './score.types.ts';

/** 1 − 0.05 is a hair below 0.95. */
const THRESHOLD_SLACK = 1e-12;

/**
 * Which of several candidate variants the removed part, or its recess in the engine, agrees with.
 *
 * Bayes' theorem with *none of these* as a candidate of its own. A number is normal around the stated figure with
 * s² = tolerance²/3 + u²; a category is misread at a small rate; *none*, and a candidate that doesn't state the feature, are
 * equally likely everywhere. A sealing feature that is proven not to conform excludes the candidate whatever its prior. The
 * choice is settled when the leader, together with those that no reading can part from it, reaches the threshold, something
 * has been read, no sealing feature is open and no function feature is wrong.
 *
 * Source: ISO 14253-1 for the verdicts (from memory), Bayes' theorem; see the README for what is common practice.
 *
 * @param question - features, candidates and readings in consistent units
 * @returns ranking and what to read next; all excluded and equal candidates are answers
 * @throws FitmentInputError `malformed`, or `impossible` for figures outside a feature's stated range or kinds
 * @example
 * comparison({
 *   features: [{ key: 'flange', kind: 'number', criticality: 'function', tolerance: 0.3 }],
 *   nonePrior: 0,
 *   candidates: [{ id: 'A', values: { flange: 53 } }, { id: 'B', values: { flange: 54 } }],
 *   readings: [{ key: 'flange', value: 53.4, standardUncertainty: 0.1 }],
 * }).ranking[0]; // { id: 'A', probability: 0.924…, verdict: 'open', … }
 */
export function comparison(question: ComparisonQuestion): ComparisonAnswer {
  checkComparison(question);
  const { features, candidates, readings, nonePrior = 0.05, threshold = 0.95 } = question;
  const evidence = featureEvidence(features, readings);
  const scored = evidence.map((each) => scoreFeature(each, candidates));
  const excluded = candidates.map((_, position) =>
    evidence.some(
      ({ feature }, index) => feature.criticality === 'sealing' && scored[index]?.scores[position]?.verdict === 'does-not-conform',
    ),
  );
  const now = posterior(
    scaledPriors(candidates, nonePrior).map((prior, position) =>
      excluded[position] === true ? Number.NEGATIVE_INFINITY : Math.log(prior) + sumLogLikelihood(scored, position),
    ),
    Math.log(nonePrior) + scored.reduce((sum, { noneLogLikelihood }) => sum + noneLogLikelihood, 0),
  );
  const groups = samePartGroups(features, candidates);
  const isAnythingRead = evidence.some(({ missing }) => missing === undefined);
  const standings = candidates.map((_, position) => candidateStanding(position, { evidence, scored, candidates, excluded }));
  const ranked = candidates.map(({ id }, position) => {
    const groupProbability = (groups[position] ?? []).reduce((sum, member) => sum + (now.candidates[member] ?? 0), 0);
    const hasReached = groupProbability >= threshold - THRESHOLD_SLACK;
    const verdict = verdictOf(standings[position], { hasReached, isAnythingRead });
    const probability = now.candidates[position] ?? 0;
    return { position, hasReached, entry: { id, probability, groupProbability, verdict, features: findings(scored, position) } };
  });
  ranked.sort((a, b) => b.entry.probability - a.entry.probability || a.position - b.position);
  const leader = ranked.reduce((best, each) => (each.entry.groupProbability > best.entry.groupProbability ? each : best));
  const openFeatures = standings[leader.position]?.openSealing ?? [];
  const settled = leader.hasReached && leader.entry.verdict === 'fits';
  const next = settled ? undefined : nextReading(evidence, candidates, { now, openFeatures });
  const sameAs = groups
    .filter((group, position) => group.length > 1 && group[0] === position)
    .map((group) => group.map((member) => candidates[member]?.id ?? ''));
  return {
    ranking: ranked.map(({ entry }) => entry),
    noneProbability: now.none,
    ...(next === undefined ? {} : { nextReading: next }),
    sameAs,
    settled,
    openFeatures,
    warnings: comparisonWarnings(question, evidence),
  };
}

function sumLogLikelihood(scored: readonly FeatureScores[], position: number): number {
  return scored.reduce((sum, { scores }) => sum + (scores[position]?.logLikelihood ?? 0), 0);
}

function verdictOf(
  standing: CandidateStanding | undefined,
  { hasReached, isAnythingRead }: { readonly hasReached: boolean; readonly isAnythingRead: boolean },
): RankedCandidate['verdict'] {
  if (standing === undefined || standing.isExcluded) return 'excluded';
  if (!isAnythingRead || standing.isFunctionWrong || standing.openSealing.length > 0) return 'open';
  return hasReached || (standing.isConfirmed && standing.openFunction.length === 0) ? 'fits' : 'open';
}

function findings(scored: readonly FeatureScores[], position: number): FeatureFinding[] {
  return scored.flatMap(({ key, scores, noneLogLikelihood }) => {
    const score = scores[position];
    if (score === undefined) return [];
    const isPossible = Number.isFinite(score.logLikelihood);
    return [
      {
        key,
        verdict: score.verdict,
        logLikelihood: isPossible ? score.logLikelihood : null,
        weightBits: isPossible ? (score.logLikelihood - noneLogLikelihood) / Math.LN2 : null,
        ...(score.note === undefined ? {} : { note: score.note }),
      },
    ];
  });
}
