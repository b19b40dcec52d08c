/**
 * How a document is or was paid. A card number is never taken: only the method and its reference.
 */
export type PaymentMethod = 'cash' | 'card' | 'credit-transfer' | 'direct-debit' | 'cheque' | 'online' | 'set-off' | 'other';

/** UNTDID 4461 codes (BT-81). Source: code list of EN 16931, from memory; 30, 49 and 58 stand in the CEN examples, read. */
export const paymentMeansCodes: Readonly<Record<PaymentMethod, string>> = {
  cash: '10',
  card: '48',
  'credit-transfer': '30',
  'direct-debit': '49',
  cheque: '20',
  online: '68',
  'set-off': '97',
  other: '1',
};

export interface PaymentMeans {
  readonly method: PaymentMethod;
  /** In words, for the page (BT-82). */
  readonly words?: string;
  /** Account the money goes to (BT-84); needed for a credit transfer (BR-61). */
  readonly account?: { readonly iban?: string; readonly number?: string; readonly name?: string; readonly bic?: string };
}
