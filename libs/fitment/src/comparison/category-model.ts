import { type ComparisonCandidate, type ComparisonFeature, type FeatureValue } from './comparison.types.ts';
import { statedValue } from './stated-value.ts';

/** How often one category is taken for another unless the feature says (common practice, no source). */
export const DEFAULT_MISREADING_RATE = 0.02;

/** The categories a feature can have and how likely each is to be read. */
export interface CategoryModel {
  /** Known by name; one more, unnamed, belongs to the count where the feature doesn't list its values. */
  readonly named: readonly FeatureValue[];
  readonly count: number;
  readonly misreadingRate: number;
}

/**
 * The categories of a feature: its own list, else those that the candidates state or that were read, and one more.
 *
 * @param feature - a category feature
 * @param candidates - all of them
 * @param read - categories that were read
 */
export function categoryModel(
  feature: ComparisonFeature,
  candidates: readonly ComparisonCandidate[],
  { read }: { readonly read: readonly FeatureValue[] },
): CategoryModel {
  const misreadingRate = feature.misreadingRate ?? DEFAULT_MISREADING_RATE;
  if (feature.values !== undefined) return { named: feature.values, count: feature.values.length, misreadingRate };
  const seen = new Set<FeatureValue>(read);
  for (const candidate of candidates) {
    const value = statedValue(candidate, feature.key);
    if (value !== undefined) seen.add(value);
  }
  return { named: [...seen], count: seen.size + 1, misreadingRate };
}

/**
 * Probability of reading one category on a part that is stated to have another, or states none (undefined).
 *
 * @param model - of the feature
 * @param read - what is read; undefined for the unnamed category
 * @param stated - what the part has; undefined when it isn't stated: every category is equally likely
 */
export function readingProbability(
  model: CategoryModel,
  read: FeatureValue | undefined,
  { stated }: { readonly stated: FeatureValue | undefined },
): number {
  if (stated === undefined) return 1 / model.count;
  if (model.count === 1) return 1;
  return read === stated ? 1 - model.misreadingRate : model.misreadingRate / (model.count - 1);
}
