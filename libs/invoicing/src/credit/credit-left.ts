import { Decimal, toAmount, toDecimal } from '#libs/money';
import { type InvoiceDocument } from '../document/invoice-document.ts';
import { InvoicingError } from '../invoicing-error.ts';
import { type VatRow } from '../totals/totals-input.ts';
import { vatKeyText } from '../totals/vat-key.ts';

/** What can still be credited of a document, per category and rate, and of its rounding. */
export interface CreditLeft {
  readonly rows: readonly VatRow[];
  readonly rounding: string;
}

/**
 * What is left of a document after its credit notes: per VAT category and rate the net and the tax, and the rounding.
 *
 * @param original the document
 * @param earlier all credit notes issued on it
 * @throws InvoicingError `not-a-credit-note` when an earlier document corrects something else
 */
export function creditLeft(original: InvoiceDocument, earlier: readonly InvoiceDocument[]): CreditLeft {
  for (const note of earlier) checkCorrects(original, note);
  const credited = (row: VatRow, part: 'taxable' | 'tax'): Decimal =>
    earlier
      .flatMap((note) => note.totals.vat)
      .filter((creditedRow) => vatKeyText(creditedRow) === vatKeyText(row))
      .reduce((sum, creditedRow) => sum.plus(toDecimal(creditedRow[part])), new Decimal(0));
  const rows = original.totals.vat.map((row) => ({
    category: row.category,
    rate: row.rate,
    taxable: toAmount(toDecimal(row.taxable).minus(credited(row, 'taxable'))),
    tax: toAmount(toDecimal(row.tax).minus(credited(row, 'tax'))),
  }));
  const roundingCredited = earlier.reduce((sum, note) => sum.plus(toDecimal(note.totals.rounding)), new Decimal(0));
  return { rows, rounding: toAmount(toDecimal(original.totals.rounding).minus(roundingCredited)) };
}

function checkCorrects(original: InvoiceDocument, note: InvoiceDocument): void {
  const corrects = note.kind === 'credit-note' && note.preceding.some((reference) => reference.number === original.number);
  if (!corrects)
    throw new InvoicingError(
      'not-a-credit-note',
      `Document ${note.number ?? 'without number'} does not correct ${original.number ?? 'a draft'}.`,
    );
}
