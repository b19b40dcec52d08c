import { Decimal, type DecimalString } from './decimal.ts';
import { toDecimal } from './to-decimal.ts';

/**
 * The exact sum of amounts; 0 for none.
 *
 * @example sumAmounts(['0.10', '0.20']).toFixed(2) // '0.30'
 */
export function sumAmounts(amounts: readonly DecimalString[]): Decimal {
  return amounts.reduce((sum, amount) => sum.plus(toDecimal(amount)), new Decimal(0));
}
