import { Decimal, roundQuotient, sumAmounts, toAmount, toDecimal } from '#libs/money';
import { type InvoiceDocument } from '../document/invoice-document.ts';
import { type DocumentAdjustment, type InvoiceLine } from '../document/invoice-line.ts';
import { type VatKey, vatKey, vatKeyText } from '../totals/vat-key.ts';
import { type CreditLeft } from './credit-left.ts';
import { lineLeft } from './line-left.ts';

export interface SharedAdjustments {
  readonly allowances: readonly DocumentAdjustment[];
  readonly charges: readonly DocumentAdjustment[];
}

interface ShareContext {
  readonly original: InvoiceDocument;
  readonly earlier: readonly InvoiceDocument[];
  readonly left: CreditLeft;
}

/**
 * What the customer really paid for a line is less by its part of a discount on the whole document. A part credit takes that
 * part back too: per category and rate, in proportion to the line nets; the credit that takes the last line takes the rest.
 */
export function sharedAdjustments(credited: readonly InvoiceLine[], context: ShareContext): SharedAdjustments {
  const keys = new Map(context.original.totals.vat.map((row) => [vatKeyText(row), { category: row.category, rate: row.rate }]));
  const shares = [...keys.values()].map((key) => ({ key, amount: shareOfRow(key, credited, context) }));
  return {
    allowances: shares.filter(({ amount }) => amount.isPositive() && !amount.isZero()).map(adjustmentOf),
    charges: shares.filter(({ amount }) => amount.isNegative()).map(adjustmentOf),
  };
}

function adjustmentOf({ key, amount }: { key: VatKey; amount: Decimal }): DocumentAdjustment {
  const reason = amount.isNegative() ? 'Share of the charges on the whole invoice' : 'Share of the discounts on the whole invoice';
  return { amount: toAmount(amount.abs()), reason, vatCategory: key.category, vatRate: key.rate };
}

/** Allowances less charges that belong to the credited lines of a row. */
function shareOfRow(key: VatKey, credited: readonly InvoiceLine[], context: ShareContext): Decimal {
  const isOfRow = (entry: Pick<InvoiceLine, 'vatCategory' | 'vatRate'>): boolean =>
    vatKeyText(vatKey(entry.vatCategory, entry.vatRate)) === vatKeyText(key);
  const { original, earlier, left } = context;
  const sum = (adjustments: readonly DocumentAdjustment[]): Decimal =>
    sumAmounts(adjustments.filter(isOfRow).map((adjustment) => adjustment.amount));
  const onRow = sum(original.allowances).minus(sum(original.charges));
  const lines = original.lines.filter(isOfRow);
  const lineTotal = sumAmounts(lines.map((line) => line.net));
  const taken = sumAmounts(credited.filter((line) => line.corrects !== undefined && isOfRow(line)).map((line) => line.net));
  if (onRow.isZero() || taken.isZero() || lineTotal.isZero()) return new Decimal(0);
  const rowLeft = toDecimal(left.rows.find((row) => vatKeyText(row) === vatKeyText(key))?.taxable ?? '0');
  const all = sumAmounts(credited.filter(isOfRow).map((line) => line.net));
  const isLast = lines.every((line) => lineLeft(line, [...earlier, { lines: credited }]).net.isZero());
  return isLast ? all.minus(rowLeft) : roundQuotient(onRow.times(taken), lineTotal, { places: 2 });
}
