import { type Decimal, roundHalfAway, roundQuotient, toDecimal } from '#libs/money';
import { type TotalsLineInput } from './totals-input.ts';

/**
 * Net amount of a line, BT-131 = round2(quantity × net price ÷ base quantity) − allowances + charges.
 *
 * Source: EN 16931, 6.4.2 and the CEN validation rules 1.3.16, read. The official rule set does not check this sum; the
 * published invoices in the spec do.
 *
 * @example lineNet({ quantity: '132', unitPrice: '15.24', baseQuantity: '12', vatCategory: 'S', vatRate: '21' }).toFixed(2) // '167.64'
 */
export function lineNet(line: TotalsLineInput): Decimal {
  const gross = toDecimal(line.quantity).times(toDecimal(line.unitPrice));
  const base = line.baseQuantity === undefined ? null : toDecimal(line.baseQuantity);
  const rounded = base === null || base.equals(1) ? roundHalfAway(gross, 2) : roundQuotient(gross, base, { places: 2 });
  const less = add(rounded, line.allowances, -1);
  return add(less, line.charges, 1);
}

function add(start: Decimal, amounts: readonly string[] | undefined, sign: 1 | -1): Decimal {
  if (amounts === undefined || amounts.length === 0) return start;
  return amounts.reduce((sum, amount) => (sign === 1 ? sum.plus(toDecimal(amount)) : sum.minus(toDecimal(amount))), start);
}
