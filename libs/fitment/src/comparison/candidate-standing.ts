import { type ConformanceVerdict } from '../conformance/conformance.types.ts';
import { type ComparisonCandidate, type Criticality } from './comparison.types.ts';
import { type FeatureEvidence } from './feature-evidence.ts';
import { type FeatureScores, type Score } from './score.types.ts';
import { statedValue } from './stated-value.ts';

/** Where one candidate stands, by its features alone. */
export interface CandidateStanding {
  readonly isExcluded: boolean;
  /** A function feature is proven to differ. */
  readonly isFunctionWrong: boolean;
  /** At least one sealing or function feature has been read and conforms. */
  readonly isConfirmed: boolean;
  readonly openSealing: readonly string[];
  readonly openFunction: readonly string[];
}

/**
 * Sorts a candidate's features into wrong and open. A feature is open until it has been read and conforms; one that nobody
 * states is not asked for, and one that could not be read is open only while the remaining candidates differ in it.
 *
 * @param position - of the candidate
 * @param context - features with their readings and scores, all candidates, and which of them a sealing feature excludes
 */
export function candidateStanding(
  position: number,
  context: {
    readonly evidence: readonly FeatureEvidence[];
    readonly scored: readonly FeatureScores[];
    readonly candidates: readonly ComparisonCandidate[];
    readonly excluded: readonly boolean[];
  },
): CandidateStanding {
  const remaining = context.candidates.filter((_, index) => context.excluded[index] !== true);
  const openOf = (criticality: Criticality): string[] =>
    context.evidence.flatMap(({ feature }, index) => {
      const score = context.scored[index]?.scores[position];
      if (feature.criticality !== criticality || score === undefined) return [];
      return isOpen(score, feature.key, { candidates: context.candidates, remaining }) ? [feature.key] : [];
    });
  const has = (verdict: ConformanceVerdict, criticalities: readonly Criticality[]): boolean =>
    context.evidence.some(
      ({ feature }, index) => criticalities.includes(feature.criticality) && context.scored[index]?.scores[position]?.verdict === verdict,
    );
  return {
    isExcluded: context.excluded[position] === true,
    isFunctionWrong: has('does-not-conform', ['function']),
    isConfirmed: has('conforms', ['sealing', 'function']),
    openSealing: openOf('sealing'),
    openFunction: openOf('function'),
  };
}

function isOpen(
  { verdict, note }: Score,
  key: string,
  { candidates, remaining }: { readonly candidates: readonly ComparisonCandidate[]; readonly remaining: readonly ComparisonCandidate[] },
): boolean {
  if (verdict !== 'not-proven') return false;
  if (candidates.every((candidate) => statedValue(candidate, key) === undefined)) return false;
  if (note !== 'could-not-be-read') return true;
  return new Set(remaining.map((candidate) => statedValue(candidate, key))).size > 1;
}
