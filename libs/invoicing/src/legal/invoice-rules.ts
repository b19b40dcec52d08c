import { type DecimalString } from '#libs/money';

/** What the workshop's country decides; set by the owner, nothing is built in. */
export interface InvoiceRules {
  /** Up to this sum with tax a simplified invoice will do; null: never. Art. 220a says at least EUR 100, art. 238 up to 400. */
  readonly simplifiedLimit: DecimalString | null;
  /** Currency in which the tax office wants the VAT total (art. 230); null: any. */
  readonly accountingCurrency: string | null;
  /** Whether VAT is due when paid, so that the document must say so (art. 226 point 7a). */
  readonly cashAccounting: boolean;
}

/** Before issue the number and date are not there yet: the issuing transaction gives both. */
export type CheckStage = 'before-issue' | 'issued';
