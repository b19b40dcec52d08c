import { type ComparisonCandidate, type ComparisonFeature } from './comparison.types.ts';
import { statedValue } from './stated-value.ts';

/**
 * Groups the candidates that state the same in every feature: no reading can part them, so they are one part under several
 * numbers.
 *
 * @param features - of the comparison
 * @param candidates - all of them
 * @returns for each candidate the positions of its group, itself included
 */
export function samePartGroups(features: readonly ComparisonFeature[], candidates: readonly ComparisonCandidate[]): number[][] {
  const groups = new Map<string, number[]>();
  const signatures = candidates.map((candidate) => JSON.stringify(features.map(({ key }) => statedValue(candidate, key) ?? null)));
  for (const [index, signature] of signatures.entries()) groups.set(signature, [...(groups.get(signature) ?? []), index]);
  return signatures.map((signature) => groups.get(signature) ?? []);
}
