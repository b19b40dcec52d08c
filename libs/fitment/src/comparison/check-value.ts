import { type FitmentProblem } from '../fitment-input-error.ts';
import { type ComparisonFeature } from './comparison.types.ts';
import { MOST_FIGURE } from './check-features.ts';

/**
 * Whether a value is of the feature's kind at all.
 *
 * @param feature - its feature
 * @param value - as given
 * @param where - the field it stands in, and what it is, in words
 * @returns problems in words; empty for a usable value
 */
export function valueKindProblems(
  feature: ComparisonFeature,
  value: unknown,
  { field, words }: { readonly field: string; readonly words: string },
): FitmentProblem[] {
  if (feature.kind === 'category') {
    const isCategory = typeof value === 'string' || typeof value === 'boolean' || (typeof value === 'number' && Number.isFinite(value));
    return isCategory ? [] : [{ field, message: `${words} must be a word: one of the kinds that ${feature.key} can be.` }];
  }
  const isFigure = typeof value === 'number' && Math.abs(value) <= MOST_FIGURE;
  return isFigure ? [] : [{ field, message: `${words} must be a number between ${-MOST_FIGURE} and ${MOST_FIGURE}.` }];
}

/**
 * Whether a value is one that the feature can have, where its range or kinds are stated.
 *
 * @param feature - its feature
 * @param value - of the feature's kind
 * @param where - the field it stands in, and what it is, in words
 * @returns problems in words; empty for a sensible value
 */
export function valueSenseProblems(
  feature: ComparisonFeature,
  value: unknown,
  { field, words }: { readonly field: string; readonly words: string },
): FitmentProblem[] {
  if (feature.kind === 'category') {
    const { values } = feature;
    if (values === undefined || values.some((known) => known === value)) return [];
    return [
      { field, message: `${words} is '${String(value)}', which ${feature.key} can't be: choose one of ${values.map(String).join(', ')}.` },
    ];
  }
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = feature;
  const isSensible = typeof value === 'number' && value >= low && value <= high;
  if (isSensible) return [];
  return [
    {
      field,
      message: `${words} is ${String(value)}, outside any sense for ${feature.key} (${rangeWords(low, high)}): check the figure and its unit.`,
    },
  ];
}

function rangeWords(low: number, high: number): string {
  if (low === Number.NEGATIVE_INFINITY) return `at most ${high}`;
  return high === Number.POSITIVE_INFINITY ? `at least ${low}` : `${low} to ${high}`;
}
