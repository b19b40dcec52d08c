import { type DecimalString, sumAmounts, toAmount, toDecimal } from '#libs/money';
import { type InvoiceDocument } from '../document/invoice-document.ts';

/**
 * What is still owed on a document: payable less its credit notes less payments (a refund counts as a negative payment).
 * Below zero: we owe the customer.
 *
 * @param document the invoice
 * @param creditNotes issued on it
 * @param options `payments`: amounts received after issue
 */
export function outstanding(
  document: Pick<InvoiceDocument, 'totals'>,
  creditNotes: readonly Pick<InvoiceDocument, 'totals'>[],
  options: { payments: readonly DecimalString[] },
): DecimalString {
  const credited = sumAmounts(creditNotes.map((note) => note.totals.payable));
  return toAmount(toDecimal(document.totals.payable).minus(credited).minus(sumAmounts(options.payments)));
}
