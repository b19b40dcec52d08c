import { numberProblems } from '../number-problems.ts';
import { refuseProblems } from '../refuse-problems.ts';
import { acceptanceHalfWidth } from './acceptance-half-width.ts';
import { type ConformanceAnswer, type ConformanceQuestion } from './conformance.types.ts';
import { judgeReading } from './judge-reading.ts';

/**
 * Whether a measured figure keeps its limits, allowing for the instrument.
 *
 * It *conforms* when the probability of being inside is 0.95 or more, *does not conform* when the reading lies outside the
 * nearer limit by at least 1.645 u, and is *not proven* in between. An instrument too coarse for the tolerance can never
 * prove conformance (acceptance null). With u = 0 the figures are simply compared, limits included.
 *
 * Source: ISO 14253-1 (from memory), JCGM 106:2012 for the probability.
 *
 * @param question - figures in one unit; tolerance and standard uncertainty 0 or more
 * @throws FitmentInputError `malformed` for figures that aren't numbers or are negative
 * @example
 * conformance({ nominal: 10, tolerance: 0.05, measured: 10.03, standardUncertainty: 0.02 });
 * // { verdict: 'not-proven', conformanceProbability: 0.8413…, acceptance: { low: 9.983, high: 10.017 } } (rounded here)
 */
export function conformance(question: ConformanceQuestion): ConformanceAnswer {
  refuseProblems('malformed', [
    ...numberProblems(question.nominal, { field: 'nominal', words: 'The nominal figure' }),
    ...numberProblems(question.tolerance, { field: 'tolerance', words: 'The tolerance', min: 0 }),
    ...numberProblems(question.measured, { field: 'measured', words: 'The reading' }),
    ...numberProblems(question.standardUncertainty, { field: 'standardUncertainty', words: 'The standard uncertainty', min: 0 }),
  ]);
  const { verdict, probability } = judgeReading(question);
  const halfWidth = acceptanceHalfWidth(question.tolerance, question.standardUncertainty);
  const acceptance = halfWidth === null ? null : { low: question.nominal - halfWidth, high: question.nominal + halfWidth };
  return { verdict, conformanceProbability: probability, acceptance };
}
