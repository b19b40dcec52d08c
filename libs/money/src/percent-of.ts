import { type Decimal, type DecimalString } from './decimal.ts';
import { roundHalfAway } from './round-half-away.ts';
import { toDecimal } from './to-decimal.ts';

/**
 * A percentage of an amount, rounded to two decimals half away from zero.
 *
 * @param amount amount of money
 * @param percent 20 means 20 %
 * @example percentOf('250.00', '2.5').toFixed(2) // '6.25'
 */
export function percentOf(amount: Decimal | DecimalString, percent: DecimalString): Decimal {
  const exact = typeof amount === 'string' ? toDecimal(amount) : amount;
  return roundHalfAway(exact.times(toDecimal(percent)).div(100), 2);
}
