import type { ColumnField } from './file-reading.types.ts';

/** Names of columns as suppliers write them, in the order in which they are tried (common practice, no source). */
export const COLUMN_NAMES: readonly { field: ColumnField; names: RegExp }[] = [
  { field: 'debit', names: /^(debit|debits|dr|soll)$/ },
  { field: 'credit', names: /^(credit|credits|cr|haben)$/ },
  { field: 'date', names: /\bdate\b|^dated?$|datum|^tax point$/ },
  { field: 'quantity', names: /^(qty|quantity|pcs|pieces|units|menge|anzahl)\b/ },
  { field: 'part', names: /\b(part|item|article|product|sku|stock)\b.*|artikel|teile/ },
  { field: 'reference', names: /your ref|our ref|customer ref|\brma\b|return (note|no|ref)|order( no| number)?$|^reference$|^ref$/ },
  { field: 'number', names: /document|doc\b|credit note|\bcn\b|invoice|voucher|beleg|\bno\.?$|^number$|transaction/ },
  { field: 'amount', names: /amount|total|value|net\b|gross|betrag|sum\b/ },
  { field: 'text', names: /description|details|text|type|narrative|particulars|bezeichnung/ },
];
