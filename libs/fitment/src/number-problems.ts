import { type FitmentProblem } from './fitment-input-error.ts';

/** Bounds that a number has to keep; `words` says what it is, such as 'The tolerance of flange'. */
export interface NumberRule {
  readonly field: string;
  readonly words: string;
  readonly min?: number;
  readonly max?: number;
  readonly above?: number;
  readonly below?: number;
}

/**
 * What is wrong with a number, in words; empty when it is finite and within its bounds.
 *
 * @param value - the number to check
 * @param rule - bounds and the words for the message
 * @example numberProblems(-1, { field: 'tolerance', words: 'The tolerance', min: 0 })
 * // [{ field: 'tolerance', message: 'The tolerance is -1: give a number of 0 or more.' }]
 */
export function numberProblems(value: unknown, rule: NumberRule): FitmentProblem[] {
  const wanted = wantedWords(rule);
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    return [{ field: rule.field, message: `${rule.words} is no number: give ${wanted}.` }];
  }
  const isOutside =
    (rule.min !== undefined && value < rule.min) ||
    (rule.max !== undefined && value > rule.max) ||
    (rule.above !== undefined && value <= rule.above) ||
    (rule.below !== undefined && value >= rule.below);
  return isOutside ? [{ field: rule.field, message: `${rule.words} is ${value}: give ${wanted}.` }] : [];
}

function wantedWords({ min, max, above, below }: NumberRule): string {
  const bounds = [
    ...(min === undefined ? [] : [`${min} or more`]),
    ...(above === undefined ? [] : [`more than ${above}`]),
    ...(max === undefined ? [] : [`at most ${max}`]),
    ...(below === undefined ? [] : [`less than ${below}`]),
  ];
  return bounds.length === 0 ? 'a number' : `a number of ${bounds.join(' and ')}`;
}
