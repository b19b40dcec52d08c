import { type Decimal, sumAmounts, toAmount, toDecimal } from '#libs/money';
import { lineNet } from './line-net.ts';
import { type Totals, type TotalsInput, type VatRow } from './totals-input.ts';
import { vatRows } from './vat-rows.ts';

/** Tax of a row where it is not simply taxable × rate: the credit note that completes a reversal takes what is left. */
export type TaxOfRow = (row: VatRow) => Decimal;

/**
 * Sums of a document from checked figures, after EN 16931: BR-CO-10 (sum of lines), 11 and 12 (document allowances and
 * charges), 13 (without VAT), 14 (VAT), 15 (with VAT), 16 (payable), all exact to the cent.
 *
 * @param input figures that {@link checkTotalsInput} let through
 * @param taxOfRow replaces the tax of rows
 * @throws MoneyError `not-a-decimal` on figures that were not checked
 */
export function computeTotals(input: TotalsInput, taxOfRow?: TaxOfRow): Totals {
  const nets = input.lines.map(lineNet);
  const computed = vatRows(input, nets);
  const vat = taxOfRow === undefined ? computed : computed.map((row) => ({ ...row, tax: toAmount(taxOfRow(row)) }));
  const lines = nets.map((net) => ({ net: toAmount(net) }));
  const lineTotal = sumAmounts(lines.map((line) => line.net));
  const allowanceTotal = sumAmounts((input.allowances ?? []).map((allowance) => allowance.amount));
  const chargeTotal = sumAmounts((input.charges ?? []).map((charge) => charge.amount));
  const taxExclusive = lineTotal.minus(allowanceTotal).plus(chargeTotal);
  const vatTotal = sumAmounts(vat.map((row) => row.tax));
  const taxInclusive = taxExclusive.plus(vatTotal);
  const prepaid = toDecimal(input.prepaid ?? '0');
  const rounding = toDecimal(input.rounding ?? '0');
  return {
    lines,
    lineTotal: toAmount(lineTotal),
    allowanceTotal: toAmount(allowanceTotal),
    chargeTotal: toAmount(chargeTotal),
    taxExclusive: toAmount(taxExclusive),
    vat,
    vatTotal: toAmount(vatTotal),
    taxInclusive: toAmount(taxInclusive),
    prepaid: toAmount(prepaid),
    rounding: toAmount(rounding),
    payable: toAmount(taxInclusive.minus(prepaid).plus(rounding)),
  };
}
