import { type DecimalString } from './decimal.ts';

/** Digits before the point. 12 + 8 digits twice make a product of 40, which {@link Decimal} still holds exactly. */
export const maxWholeDigits = 12;
/** Digits after the point. */
export const maxFractionDigits = 8;

const plainDecimal = /^-?\d{1,12}(\.\d{1,8})?$/;

/**
 * Whether a value is a plain decimal text that this project computes with exactly: at most 12 digits before and 8 after
 * the point, no grouping, no exponent, no leading plus.
 *
 * @example isDecimalString('12.50') // true
 * @example isDecimalString('1e3') // false
 */
export function isDecimalString(value: unknown): value is DecimalString {
  return typeof value === 'string' && plainDecimal.test(value);
}
