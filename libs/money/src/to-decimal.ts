import { Decimal, type DecimalString } from './decimal.ts';
import { MoneyError } from './money-error.ts';

const anyPlainDecimal = /^-?\d+(\.\d+)?$/;

/**
 * A decimal text as a number to compute with. Unlike {@link isDecimalString} it sets no limit on digits, so that sums and
 * products can be read back.
 *
 * @throws MoneyError `not-a-decimal` when the text is no plain decimal; check what people typed before.
 * @example toDecimal('21.00').equals('21') // true
 */
export function toDecimal(text: DecimalString): Decimal {
  if (!anyPlainDecimal.test(text)) throw new MoneyError('not-a-decimal', `"${text}" is not a plain decimal such as 12.50.`);
  return new Decimal(text);
}
