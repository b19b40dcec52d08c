import { type Decimal, type DecimalString } from './decimal.ts';
import { roundHalfAway } from './round-half-away.ts';

/**
 * An amount as text with a fixed number of decimals, rounded half away from zero, never '-0.00'.
 *
 * @param value amount
 * @param places decimals shown, 2 unless said
 * @example toAmount('12.5') // '12.50'
 */
export function toAmount(value: Decimal | DecimalString, places = 2): DecimalString {
  return roundHalfAway(value, places).toFixed(places);
}
