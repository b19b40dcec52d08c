import { type ComparisonFeature, type ComparisonReading, type FeatureValue, type FindingNote } from './comparison.types.ts';
import { type PooledReading, poolReadings } from './pool-readings.ts';

/** What was read of one feature. */
export interface FeatureEvidence {
  readonly feature: ComparisonFeature;
  /** Undefined when there is something to judge by. */
  readonly missing: Extract<FindingNote, 'not-read' | 'could-not-be-read'> | undefined;
  /** Numbers: one figure per place. */
  readonly figures: readonly PooledReading[];
  /** Categories: each different value once per place. */
  readonly categories: readonly FeatureValue[];
}

/**
 * Sorts the readings by feature.
 *
 * @param features - of the comparison
 * @param readings - all of them
 * @returns one entry per feature, in the features' order
 */
export function featureEvidence(features: readonly ComparisonFeature[], readings: readonly ComparisonReading[]): FeatureEvidence[] {
  return features.map((feature) => {
    const own = readings.filter(({ key }) => key === feature.key);
    const made = own.filter(({ value }) => value !== null);
    const missing = made.length > 0 ? undefined : own.length > 0 ? 'could-not-be-read' : 'not-read';
    return {
      feature,
      missing,
      figures: feature.kind === 'number' ? poolReadings(made) : [],
      categories: feature.kind === 'category' ? differentCategories(made) : [],
    };
  });
}

function differentCategories(readings: readonly ComparisonReading[]): FeatureValue[] {
  const isFirst = ({ value, measuredAt }: ComparisonReading, index: number): boolean =>
    readings.findIndex((other) => other.value === value && other.measuredAt === measuredAt) === index;
  return readings.filter(isFirst).flatMap(({ value }) => (value === null ? [] : [value]));
}
