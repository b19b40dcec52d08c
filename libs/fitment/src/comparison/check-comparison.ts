import { type FitmentProblem } from '../fitment-input-error.ts';
import { numberProblems } from '../number-problems.ts';
import { refuseProblems } from '../refuse-problems.ts';
import { featureProblems, MOST_FIGURE } from './check-features.ts';
import { valueKindProblems, valueSenseProblems } from './check-value.ts';
import { type ComparisonCandidate, type ComparisonFeature, type ComparisonQuestion } from './comparison.types.ts';
import { statedValue } from './stated-value.ts';

type ValueCheck = typeof valueKindProblems;

/**
 * Refuses what can't be compared: first what can't be read, then what makes no sense.
 *
 * @throws FitmentInputError `malformed`, or `impossible` for figures outside a feature's stated range or kinds
 */
export function checkComparison(question: ComparisonQuestion): void {
  const { features, candidates, nonePrior = 0.05, threshold = 0.95 } = question;
  refuseProblems('malformed', [
    ...featureProblems(features),
    ...numberProblems(nonePrior, { field: 'nonePrior', words: "The probability of 'none of these'", min: 0, below: 1 }),
    ...numberProblems(threshold, { field: 'threshold', words: 'The threshold', above: 0, max: 1 }),
    ...candidateListProblems(candidates),
    ...readingListProblems(question),
  ]);
  refuseProblems('malformed', everyValue(question, valueKindProblems));
  refuseProblems('impossible', everyValue(question, valueSenseProblems));
}

function candidateListProblems(candidates: readonly ComparisonCandidate[]): FitmentProblem[] {
  if (candidates.length === 0) return [{ field: 'candidates', message: 'There is no candidate to compare: add at least one variant.' }];
  const problems = candidates.flatMap(({ id, prior = 1 }, index) => [
    ...(candidates.findIndex((other) => other.id === id) === index
      ? []
      : [{ field: `candidates[${index}].id`, message: `The candidate ${id} is listed twice: leave one of them out.` }]),
    ...numberProblems(prior, { field: `candidates[${index}].prior`, words: `The prior of ${id}`, min: 0, max: MOST_FIGURE }),
  ]);
  const isHopeless = candidates.every(({ prior }) => prior === 0);
  return isHopeless
    ? [...problems, { field: 'candidates', message: 'Every prior is 0: leave them out or give at least one above 0.' }]
    : problems;
}

function readingListProblems({ features, readings }: ComparisonQuestion): FitmentProblem[] {
  return readings.flatMap(({ key, standardUncertainty = 0 }, index) => [
    ...(features.some((feature) => feature.key === key)
      ? []
      : [
          {
            field: `readings[${index}].key`,
            message: `There is a reading of '${key}', which is no feature here: use one of ${features.map((feature) => feature.key).join(', ')}.`,
          },
        ]),
    ...numberProblems(standardUncertainty, {
      field: `readings[${index}].standardUncertainty`,
      words: `The standard uncertainty of the reading of ${key}`,
      min: 0,
      max: MOST_FIGURE,
    }),
  ]);
}

function everyValue({ features, candidates, readings }: ComparisonQuestion, check: ValueCheck): FitmentProblem[] {
  const featureOf = new Map<string, ComparisonFeature>(features.map((feature) => [feature.key, feature]));
  return [
    ...candidates.flatMap((candidate, index) =>
      features.flatMap((feature) => {
        const value = statedValue(candidate, feature.key);
        const where = { field: `candidates[${index}].values.${feature.key}`, words: `The ${feature.key} of ${candidate.id}` };
        return value === undefined ? [] : check(feature, value, where);
      }),
    ),
    ...readings.flatMap(({ key, value }, index) => {
      const feature = featureOf.get(key);
      if (feature === undefined || value === null) return [];
      return check(feature, value, { field: `readings[${index}].value`, words: `The reading of ${key}` });
    }),
  ];
}
