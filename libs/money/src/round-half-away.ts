import { Decimal, type DecimalString } from './decimal.ts';
import { toDecimal } from './to-decimal.ts';

/**
 * Rounds to a number of decimals, a half going away from zero: 0.125 → 0.13 and −0.125 → −0.13. This is the rounding of
 * EN 16931 (BT-131, BT-117), told apart from the XPath `round()`, which sends −0.5 to −0.
 *
 * Source: published pair BIS3_Invoice_positive / BIS3_Invoice_negativ (156435.885 → 156435.89, −156435.885 → −156435.89), read.
 *
 * @param value amount in any unit
 * @param places decimals kept, 0 or more
 * @example roundHalfAway('-156435.885', 2).toFixed(2) // '-156435.89'
 */
export function roundHalfAway(value: Decimal | DecimalString, places: number): Decimal {
  const exact = typeof value === 'string' ? toDecimal(value) : value;
  const rounded = exact.toDecimalPlaces(places, Decimal.ROUND_HALF_UP);
  return rounded.isZero() ? new Decimal(0) : rounded;
}
