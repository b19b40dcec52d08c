import { type ComparisonCandidate, type FeatureValue } from './comparison.types.ts';

/**
 * What a variant is stated to have, or undefined when nothing is.
 *
 * @example statedValue({ id: 'A', values: { seal: 'o-ring' } }, 'seal') // 'o-ring'
 */
export function statedValue(candidate: ComparisonCandidate, key: string): FeatureValue | undefined {
  return Object.hasOwn(candidate.values, key) ? (candidate.values[key] ?? undefined) : undefined;
}

/**
 * The stated numbers of all candidates for one feature.
 *
 * @example statedNumbers([{ id: 'A', values: { flange: 54 } }, { id: 'B', values: {} }], 'flange') // [54]
 */
export function statedNumbers(candidates: readonly ComparisonCandidate[], key: string): number[] {
  return candidates.map((candidate) => statedValue(candidate, key)).filter((value) => typeof value === 'number');
}
