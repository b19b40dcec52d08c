import { isDecimalString, maxFractionDigits, maxWholeDigits, toDecimal } from '#libs/money';
import { type FieldError } from '../outcome.ts';

export interface FigureRule {
  /** What the figure is called in the message, such as 'Line 2: the unit price'. */
  readonly what: string;
  /** Decimals allowed; 8 unless said. Amounts of money have two (BR-DEC rules). */
  readonly places?: number;
  readonly sign?: 'any' | 'zero-or-more' | 'above-zero';
  /** What to do instead when the sign is wrong. */
  readonly instead?: string;
}

/** Checks one figure of user input; no error means it can be computed with. */
export function checkFigure(field: string, value: unknown, rule: FigureRule): FieldError[] {
  const fail = (message: string): FieldError[] => [{ field, message: `${rule.what} ${message}` }];
  if (value === undefined || value === null || value === '') return fail('is missing. Enter a number such as 12.50.');
  if (typeof value === 'number') return fail(`is sent as a number, which can lose cents. Send it as text, such as "12.50".`);
  if (!isDecimalString(value)) return fail(describeBadText(value));
  const places = rule.places ?? maxFractionDigits;
  const exact = toDecimal(value);
  if (exact.decimalPlaces() > places) return fail(`has more than ${places} decimals. Round it to ${places}.`);
  const sign = rule.sign ?? 'any';
  if (sign === 'zero-or-more' && exact.isNegative() && !exact.isZero())
    return fail(`is below zero. ${rule.instead ?? 'Enter zero or more.'}`);
  if (sign === 'above-zero' && exact.lte(0)) return fail(`is not above zero. ${rule.instead ?? 'Enter a number above zero.'}`);
  return [];
}

function describeBadText(value: unknown): string {
  if (typeof value !== 'string') return 'is not a number. Send it as text, such as "12.50".';
  if (/^-?\d+(\.\d+)?$/.test(value))
    return `has too many digits: at most ${maxWholeDigits} before and ${maxFractionDigits} after the point.`;
  return `"${value.slice(0, 40)}" is not a number. Write it with a point and no spaces, such as 12.50.`;
}
