import type { DocumentKind, FoundDifference, MatchRole } from './reconciled.types.ts';

export const KIND_WORDS: Readonly<Record<DocumentKind, string>> = {
  invoice: 'Invoice',
  'credit-note': 'Credit note',
  statement: 'Statement',
};

export const DIFFERENCE_WORDS: Readonly<Record<FoundDifference['kind'], string>> = {
  'not-credited': 'missing',
  short: 'short',
  over: 'too much',
  'restocking-beyond-terms': 'kept beyond terms',
  unknown: 'unknown',
  twice: 'twice',
  price: 'other price',
};

export const REASON_WORDS: Readonly<Record<string, string>> = {
  'equal-score': 'another would do as well',
  'little-evidence': 'little to go by',
  contradiction: 'something contradicts it',
};

export const LINE_KIND_WORDS: Readonly<Record<string, string>> = {
  credit: 'credit',
  invoice: 'an invoice',
  payment: 'a payment',
  carriage: 'carriage',
  restocking: 'a restocking fee',
  'core-charge': 'a core charge',
  balance: 'a balance',
};

export const ROLE_WORDS: Readonly<Record<MatchRole, string>> = {
  whole: 'its line',
  part: 'a further part',
  twice: 'once more',
  same: 'the same money as entered before',
};
