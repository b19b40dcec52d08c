import { type Decimal, type DecimalString } from './decimal.ts';
import { toDecimal } from './to-decimal.ts';

/**
 * The shortest text of a number, so that equal numbers have equal texts: '21.00' and '21' both become '21'.
 *
 * @example plainDecimal('5.50') // '5.5'
 */
export function plainDecimal(value: Decimal | DecimalString): DecimalString {
  const exact = typeof value === 'string' ? toDecimal(value) : value;
  return exact.isZero() ? '0' : exact.toFixed();
}
