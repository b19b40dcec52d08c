import { type DecimalString, plainDecimal, toAmount } from '#libs/money';
import { type InvoiceDocument } from '../document/invoice-document.ts';
import { lineLeft } from './line-left.ts';

/** What of one line can still be credited, both with the sign of the line. */
export interface LineToCredit {
  readonly lineId: string;
  readonly quantity: DecimalString;
  /** Before tax. */
  readonly net: DecimalString;
}

/**
 * What is left of each line of a document after its credit notes, to show beside the line when part of it is credited. Amounts
 * credited at a rate and tied to no line are not in it: {@link creditLeft} has them.
 *
 * @param original the document
 * @param earlier all credit notes issued on it
 * @example linesLeft(original, [noteOverTwoOfThree]) // [{ lineId: '2', quantity: '1', net: '31.90' }, …]
 */
export function linesLeft(original: Pick<InvoiceDocument, 'lines'>, earlier: readonly Pick<InvoiceDocument, 'lines'>[]): LineToCredit[] {
  return original.lines.map((line) => {
    const { quantity, net } = lineLeft(line, earlier);
    return { lineId: line.id, quantity: plainDecimal(quantity), net: toAmount(net) };
  });
}
