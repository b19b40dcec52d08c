import { isDecimalString } from '#libs/money';
import { type MatchingProblem } from '../matching-input-error.ts';
import { dayNumber } from './day-number.ts';

/** Where a value stands and what it is, in words. */
export interface FieldPlace {
  readonly field: string;
  readonly words: string;
}

/**
 * Problems of a date; none for a missing one.
 *
 * @example dateProblems('2026-02-30', { field: 'lines[0].date', words: 'The date of line 1' })
 * // [{ field: 'lines[0].date', message: "The date of line 1 is '2026-02-30', which doesn't exist: write it as 2026-11-24." }]
 */
export function dateProblems(date: string | null | undefined, { field, words }: FieldPlace): MatchingProblem[] {
  if (date === null || date === undefined || dayNumber(date) !== null) return [];
  return [{ field, message: `${words} is '${date}', which doesn't exist: write it as 2026-11-24.` }];
}

/**
 * Problems of an amount of money; `least` forbids smaller ones.
 *
 * @example amountProblems('12,50', { field: 'lines[0].net', words: 'The net of line 1' })
 * // [{ field: 'lines[0].net', message: "The net of line 1 is '12,50', which is no amount: write it with a point, such as 12.50." }]
 */
export function amountProblems(
  amount: unknown,
  { field, words }: FieldPlace,
  { least }: { readonly least?: number } = {},
): MatchingProblem[] {
  if (!isDecimalString(amount)) {
    return [{ field, message: `${words} is '${String(amount)}', which is no amount: write it with a point, such as 12.50.` }];
  }
  if (least === undefined || Number(amount) >= least) return [];
  return [{ field, message: `${words} is ${amount}: give ${least} or more.` }];
}

/**
 * Problems of ids: each has to be there and to occur once.
 *
 * @param items - anything with an id
 * @param list - name of the list, such as 'lines'
 * @param words - what one of them is, such as 'line'
 */
export function idProblems(
  items: readonly { readonly id: string }[],
  { list, words }: { readonly list: string; readonly words: string },
): MatchingProblem[] {
  const seen = new Set<string>();
  return items.flatMap(({ id }, index) => {
    const isRepeated = seen.has(id);
    seen.add(id);
    return isRepeated ? [{ field: `${list}[${index}].id`, message: `The ${words} ${id} is there twice: leave one of them out.` }] : [];
  });
}
