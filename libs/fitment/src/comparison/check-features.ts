import { type FitmentProblem } from '../fitment-input-error.ts';
import { numberProblems } from '../number-problems.ts';
import { type ComparisonFeature } from './comparison.types.ts';

/** Figures beyond it are slips; within it no sum or square overflows. */
export const MOST_FIGURE = 1e9;

/**
 * What is wrong with the features of a comparison; empty when they can be used.
 *
 * @example featureProblems([{ key: 'flange', kind: 'number', criticality: 'sealing', tolerance: -1 }])
 * // [{ field: 'features[0].tolerance', message: 'The tolerance of flange is -1: give a number of 0 or more and at most 1000000000.' }]
 */
export function featureProblems(features: readonly ComparisonFeature[]): FitmentProblem[] {
  if (features.length === 0) return [{ field: 'features', message: 'There is no feature to compare: add at least one.' }];
  return features.flatMap((feature, index) => {
    const field = `features[${index}]`;
    const isRepeated = features.findIndex((other) => other.key === feature.key) !== index;
    return [
      ...(feature.key === '' ? [{ field: `${field}.key`, message: `Feature ${index + 1} has no key: give it a name.` }] : []),
      ...(isRepeated ? [{ field: `${field}.key`, message: `The feature ${feature.key} is listed twice: leave one of them out.` }] : []),
      ...wordProblems(feature, field),
      ...figureProblems(feature, field),
      ...rangeProblems(feature, field),
    ];
  });
}

function wordProblems({ key, kind, criticality }: ComparisonFeature, field: string): FitmentProblem[] {
  const isKind = ['category', 'number'].includes(kind);
  const isCriticality = ['sealing', 'function', 'advisory'].includes(criticality);
  return [
    ...(isKind ? [] : [{ field: `${field}.kind`, message: `The kind of ${key} must be 'category' or 'number'.` }]),
    ...(isCriticality
      ? []
      : [{ field: `${field}.criticality`, message: `The criticality of ${key} must be 'sealing', 'function' or 'advisory'.` }]),
  ];
}

function figureProblems(feature: ComparisonFeature, field: string): FitmentProblem[] {
  const { key, tolerance = 0, misreadingRate = 0, minutes = 1, standardUncertainty = 0 } = feature;
  return [
    ...numberProblems(tolerance, { field: `${field}.tolerance`, words: `The tolerance of ${key}`, min: 0, max: MOST_FIGURE }),
    ...numberProblems(misreadingRate, { field: `${field}.misreadingRate`, words: `The misreading rate of ${key}`, min: 0, below: 1 }),
    ...numberProblems(minutes, { field: `${field}.minutes`, words: `The time to read ${key}`, above: 0, max: MOST_FIGURE }),
    ...numberProblems(standardUncertainty, {
      field: `${field}.standardUncertainty`,
      words: `The standard uncertainty of ${key}`,
      min: 0,
      max: MOST_FIGURE,
    }),
  ];
}

function rangeProblems({ key, kind, low, high, values }: ComparisonFeature, field: string): FitmentProblem[] {
  if (kind === 'category') {
    if (values === undefined) return [];
    if (values.length === 0) return [{ field: `${field}.values`, message: `${key} has no values: list them or leave them out.` }];
    const repeated = values.find((value, index) => values.indexOf(value) !== index);
    return repeated === undefined ? [] : [{ field: `${field}.values`, message: `${key} lists ${String(repeated)} twice.` }];
  }
  const bounds = { min: -MOST_FIGURE, max: MOST_FIGURE };
  const problems = [
    ...(low === undefined ? [] : numberProblems(low, { field: `${field}.low`, words: `The lowest ${key}`, ...bounds })),
    ...(high === undefined ? [] : numberProblems(high, { field: `${field}.high`, words: `The highest ${key}`, ...bounds })),
  ];
  if (problems.length > 0 || low === undefined || high === undefined || low < high) return problems;
  return [{ field: `${field}.high`, message: `The range of ${key} is empty: its highest figure must be above ${low}.` }];
}
