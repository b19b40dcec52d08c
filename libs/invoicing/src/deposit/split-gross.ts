import { Decimal, type DecimalString, percentOf, roundQuotient, toAmount, toDecimal } from '#libs/money';

export interface GrossSplit {
  readonly net: DecimalString;
  readonly tax: DecimalString;
  /** Cents by which net + tax miss the gross (BT-114); not every gross amount can be split exactly. */
  readonly rounding: DecimalString;
}

/**
 * Net and VAT inside an amount that includes VAT, such as a deposit of a round sum. The net is the one whose VAT brings it
 * nearest to the gross; what is still missing is the rounding amount.
 *
 * @param gross amount with VAT, two decimals
 * @param rate per cent; null for category O
 * @example splitGross('100.00', '20') // { net: '83.33', tax: '16.67', rounding: '0.00' }
 * @example splitGross('100.00', '21') // { net: '82.64', tax: '17.35', rounding: '0.01' }
 */
export function splitGross(gross: DecimalString, rate: DecimalString | null): GrossSplit {
  const percent = rate === null ? new Decimal(0) : toDecimal(rate);
  const net = roundQuotient(toDecimal(gross).times(100), percent.plus(100), { places: 2 });
  const tax = percentOf(net, percent.toFixed());
  return { net: toAmount(net), tax: toAmount(tax), rounding: toAmount(toDecimal(gross).minus(net).minus(tax)) };
}
