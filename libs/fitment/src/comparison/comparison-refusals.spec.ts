import { describe, expect, it } from '@jest/globals';
import { FitmentInputError } from '../fitment-input-error.ts';
import { type ComparisonQuestion } from './comparison.types.ts';
import { comparison } from './comparison.ts';

const good: ComparisonQuestion = {
  features: [
    { key: 'flange', kind: 'number', criticality: 'sealing', tolerance: 0.3, low: 30, high: 100 },
    { key: 'seal', kind: 'category', criticality: 'sealing', values: ['o-ring', 'flat-gasket'] },
  ],
  candidates: [{ id: 'A', values: { flange: 54, seal: 'o-ring' } }],
  readings: [{ key: 'flange', value: 54, standardUncertainty: 0.1 }],
};

const refusal = (question: ComparisonQuestion): FitmentInputError => {
  try {
    comparison(question);
  } catch (error) {
    if (error instanceof FitmentInputError) return error;
  }
  throw new Error('was not refused');
};

describe('figures outside any sense', () => {
  it.each([5, 500])('refuses a %p mm flange in words', (value) => {
    const error = refusal({ ...good, readings: [{ key: 'flange', value }] });
    expect(error.code).toBe('impossible');
    expect(error.problems).toEqual([
      {
        field: 'readings[0].value',
        message: `The reading of flange is ${value}, outside any sense for flange (30 to 100): check the figure and its unit.`,
      },
    ]);
  });

  it('refuses a category that the feature cannot be', () => {
    const error = refusal({ ...good, readings: [{ key: 'seal', value: 'glue' }] });
    expect(error.code).toBe('impossible');
    expect(error.message).toContain('choose one of o-ring, flat-gasket');
  });

  it('refuses a variant that states nonsense', () => {
    const error = refusal({ ...good, candidates: [{ id: 'A', values: { flange: 540 } }] });
    expect(error.problems[0]?.field).toBe('candidates[0].values.flange');
  });
});

describe('malformed questions', () => {
  const [flange, seal] = good.features;
  if (flange === undefined || seal === undefined) throw new Error('two features');
  it.each<[string, ComparisonQuestion, string]>([
    ['no candidates', { ...good, candidates: [] }, 'no candidate to compare'],
    ['no features', { ...good, features: [], readings: [] }, 'no feature to compare'],
    ['a candidate twice', { ...good, candidates: [...good.candidates, ...good.candidates] }, 'A is listed twice'],
    ['a feature twice', { ...good, features: [flange, flange] }, 'flange is listed twice'],
    ['a negative tolerance', { ...good, features: [{ ...flange, tolerance: -1 }, seal] }, 'The tolerance of flange is -1'],
    ['no time at all', { ...good, features: [{ ...flange, minutes: 0 }, seal] }, 'more than 0'],
    ['an empty range', { ...good, features: [{ ...flange, low: 60, high: 60 }, seal] }, 'The range of flange is empty'],
    ['a negative prior', { ...good, candidates: [{ id: 'A', prior: -1, values: {} }] }, 'The prior of A is -1'],
    ['hopeless priors', { ...good, candidates: [{ id: 'A', prior: 0, values: {} }] }, 'Every prior is 0'],
    ['none certain', { ...good, nonePrior: 1 }, "'none of these'"],
    ['NaN', { ...good, readings: [{ key: 'flange', value: Number.NaN }] }, 'must be a number'],
    ['a word for a number', { ...good, readings: [{ key: 'flange', value: 'wide' }] }, 'The reading of flange must be a number'],
    ['an unknown feature', { ...good, readings: [{ key: 'flnge', value: 54 }] }, 'use one of flange, seal'],
    [
      'an infinite uncertainty',
      { ...good, readings: [{ key: 'flange', value: 54, standardUncertainty: Number.POSITIVE_INFINITY }] },
      'standard uncertainty',
    ],
  ])('%s', (_, question, words) => {
    const error = refusal(question);
    expect(error.code).toBe('malformed');
    expect(error.message).toContain(words);
  });

  it('does not mistake an object’s own words for features', () => {
    const question = {
      ...good,
      features: [{ key: 'constructor', kind: 'number' as const, criticality: 'advisory' as const }],
      readings: [],
    };
    expect(comparison(question).ranking).toHaveLength(1);
  });
});
