/** What a line of a supplier's document can be. */
export type LineKind = 'credit' | 'invoice' | 'payment' | 'carriage' | 'restocking' | 'core-charge' | 'balance';

/**
 * Words by which suppliers name what isn't a part, in the order in which they are tried: 'credit card payment' is a payment,
 * 'delivery refund' is carriage. Common practice, no source.
 */
export const lineWords: readonly { readonly kind: LineKind; readonly words: readonly string[] }[] = [
  { kind: 'balance', words: ['balance', 'brought forward', 'carried forward', 'b/f', 'c/f'] },
  { kind: 'payment', words: ['payment', 'paid', 'cheque', 'direct debit', 'bank transfer', 'remittance', 'thank you'] },
  { kind: 'restocking', words: ['restocking', 're-stocking', 'handling charge', 'handling fee', 'return fee'] },
  { kind: 'core-charge', words: ['core charge', 'core credit', 'core deposit', 'old unit', 'exchange deposit', 'surcharge'] },
  { kind: 'carriage', words: ['carriage', 'delivery', 'freight', 'postage', 'shipping', 'courier'] },
  { kind: 'credit', words: ['credit', 'refund', 'returned', 'return', 'cn'] },
  { kind: 'invoice', words: ['invoice', 'inv'] },
];
