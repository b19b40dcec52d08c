import { type DecimalString } from '#libs/money';
import { type InvoiceDocument, type IssuedDocument } from '../document/invoice-document.ts';
import { type TaxTreatment } from '../document/invoice-line.ts';

/** Part of a document to take back. */
export type CreditItem =
  /** So many of a line (2 of 3 hoses); the quantity is given without sign. */
  | { readonly kind: 'quantity'; readonly lineId: string; readonly quantity: DecimalString }
  /** Money off a line before tax, the goods stay; without sign. */
  | { readonly kind: 'amount'; readonly lineId: string; readonly net: DecimalString; readonly words: string }
  /** Money off at a rate, tied to no line; without sign. */
  | ({ readonly kind: 'free'; readonly net: DecimalString; readonly words: string } & TaxTreatment);

export interface CreditRequest {
  readonly original: IssuedDocument;
  /** Credit notes already issued on it, all of them. */
  readonly earlier: readonly InvoiceDocument[];
  /** `rest`: all that is left (the whole document when nothing was credited). `parts`: what is listed. */
  readonly what: { readonly kind: 'rest' } | { readonly kind: 'parts'; readonly items: readonly CreditItem[] };
  /** What is being amended and why; stands on the credit note. */
  readonly reason: string;
}

export interface CreditNote {
  /** Composed, without number and date: both are given at issue. */
  readonly document: InvoiceDocument;
  /** Whether nothing of the original is left after it. */
  readonly completes: boolean;
}
