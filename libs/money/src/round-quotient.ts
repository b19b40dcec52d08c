import { Decimal } from './decimal.ts';

/**
 * Divides and rounds in one step, half away from zero, without an intermediate quotient that is itself rounded: the whole
 * steps are counted in whole numbers, so 1 ÷ 3 and its like cannot tip a half.
 *
 * @param dividend any amount of up to 30 digits
 * @param divisor not zero
 * @param options decimals kept
 * @example roundQuotient(new Decimal('1'), new Decimal('3'), { places: 2 }).toFixed(2) // '0.33'
 * @example roundQuotient(new Decimal('-1'), new Decimal('8'), { places: 2 }).toFixed(2) // '-0.13'
 */
export function roundQuotient(dividend: Decimal, divisor: Decimal, options: { places: number }): Decimal {
  const step = new Decimal(10).pow(options.places);
  const magnitude = dividend.abs().times(step).times(2).plus(divisor.abs()).divToInt(divisor.abs().times(2)).div(step);
  if (magnitude.isZero()) return magnitude;
  return dividend.isNegative() === divisor.isNegative() ? magnitude : magnitude.negated();
}
