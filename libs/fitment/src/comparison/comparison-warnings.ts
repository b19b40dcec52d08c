import { type ComparisonQuestion } from './comparison.types.ts';
import { type FeatureEvidence } from './feature-evidence.ts';
import { statedValue } from './stated-value.ts';

/**
 * What a person should know about the readings, in words.
 *
 * @param question - as asked
 * @param evidence - its features with what was read
 */
export function comparisonWarnings({ candidates, readings }: ComparisonQuestion, evidence: readonly FeatureEvidence[]): string[] {
  return evidence.flatMap(({ feature, figures, categories, missing }) => {
    const own = readings.filter(({ key, value }) => key === feature.key && value !== null);
    const isTorn =
      figures.some((figure) => figure.isTorn) || categories.length > own.map(({ measuredAt }) => measuredAt).filter(isFirst).length;
    const isTakenAsExact = (feature.standardUncertainty ?? 0) > 0 && own.some((reading) => reading.standardUncertainty === undefined);
    const isUnstated = missing === undefined && candidates.every((candidate) => statedValue(candidate, feature.key) === undefined);
    return [
      ...(isTorn ? [`The readings of ${feature.key} contradict each other: read it again, or check that they are of one part.`] : []),
      ...(isTakenAsExact ? [`A reading of ${feature.key} came without an uncertainty and was taken as exact: name the instrument.`] : []),
      ...(isUnstated ? [`No candidate states its ${feature.key}, so the reading of it tells nothing.`] : []),
    ];
  });
}

function isFirst<T>(value: T, index: number, all: readonly T[]): boolean {
  return all.indexOf(value) === index;
}
