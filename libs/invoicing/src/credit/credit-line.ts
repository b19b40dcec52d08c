import { type Decimal, plainDecimal, roundQuotient, toAmount, toDecimal } from '#libs/money';
import { type DraftLine, type InvoiceLine, type PriceAdjustment } from '../document/invoice-line.ts';
import { lineInputOf } from '../document/totals-input-of.ts';
import { lineNet } from '../totals/line-net.ts';

/**
 * The credit line that takes back a quantity of a line at its price, with its share of the line's allowances and charges.
 * The last piece takes what is left of the line's net: a difference of cents becomes an allowance or charge that says so.
 *
 * @param line the line of the original
 * @param quantity with the sign of the line
 * @param options `closesAt`: the net that is left, when this quantity is the last of the line
 */
export function creditLine(line: InvoiceLine, quantity: Decimal, options: { closesAt: Decimal | null }): DraftLine {
  const scaled = (adjustments: readonly PriceAdjustment[] | undefined): PriceAdjustment[] =>
    (adjustments ?? []).map((adjustment) => ({
      amount: toAmount(roundQuotient(toDecimal(adjustment.amount).times(quantity), toDecimal(line.quantity), { places: 2 })),
      reason: adjustment.reason,
      ...(adjustment.reasonCode === undefined ? {} : { reasonCode: adjustment.reasonCode }),
    }));
  const plain: DraftLine = {
    ...line,
    quantity: plainDecimal(quantity),
    allowances: scaled(line.allowances),
    charges: scaled(line.charges),
    corrects: { lineId: line.id, quantity: plainDecimal(quantity) },
  };
  return options.closesAt === null ? plain : closeToCent(plain, options.closesAt);
}

function closeToCent(line: DraftLine, net: Decimal): DraftLine {
  const difference = lineNet(lineInputOf(line)).minus(net);
  if (difference.isZero()) return line;
  const adjustment = { amount: toAmount(difference.abs()), reason: 'Difference to what was invoiced and already credited' };
  return difference.isNegative()
    ? { ...line, charges: [...(line.charges ?? []), adjustment] }
    : { ...line, allowances: [...(line.allowances ?? []), adjustment] };
}
