import { type DecimalString } from '#libs/money';
import { type Totals } from '../totals/totals-input.ts';
import { type VatCategory } from '../totals/vat-category.ts';
import { type DocumentAdjustment, type DraftLine, type InvoiceLine } from './invoice-line.ts';
import { type JobOnDocument } from './job-facts.ts';
import { type InvoiceParty, type PostalAddress } from './party.ts';
import { type PaymentMeans, type PaymentMethod } from './payment-means.ts';

/** A calendar day, 'YYYY-MM-DD'. */
export type IsoDate = string;

/** `invoice` 380, `deposit-invoice` 386 (a payment on account with its own tax document), `credit-note` 381. */
export type DocumentKind = 'invoice' | 'deposit-invoice' | 'credit-note';

/** Full contents, or the fewer of a simplified invoice under the set limit. */
export type DocumentForm = 'full' | 'simplified';

/** Words that the law wants on certain documents (art. 226 points 7a, 10a and 13 to 14 of Directive 2006/112/EC). */
export type LegalMark = 'cash-accounting' | 'self-billing' | 'margin-scheme-second-hand';

export interface DocumentReference {
  readonly number: string;
  readonly issueDate?: IsoDate;
}

/** Why no VAT is charged in a category (BT-120, BT-121). */
export interface ExemptionReason {
  readonly category: VatCategory;
  readonly text: string;
  /** VATEX code. */
  readonly code?: string;
}

/** Money received before issue for which there is no tax document; their sum is `prepaid`. */
export interface Prepayment {
  readonly amount: DecimalString;
  readonly date: IsoDate;
  readonly method: PaymentMethod;
  readonly reference?: string;
}

/** A document as drafted at the till, without its sums. */
export interface InvoiceDraft {
  readonly kind: DocumentKind;
  readonly form: DocumentForm;
  /** Given at issue; null before. */
  readonly number: string | null;
  readonly issueDate: IsoDate | null;
  /** ISO 4217. */
  readonly currency: string;
  /** Language of the page, BCP 47. */
  readonly language: string;
  readonly seller: InvoiceParty;
  /** May be missing on a simplified invoice only. */
  readonly buyer?: InvoiceParty;
  readonly taxRepresentative?: InvoiceParty | undefined;
  /** When the work was finished, or the deposit received (BT-72). */
  readonly supplyDate?: IsoDate;
  /** Work over several days (BT-73, BT-74). */
  readonly supplyPeriod?: { readonly start?: IsoDate; readonly end?: IsoDate };
  /** Where goods went, when not to the buyer's address; the country is needed for category K (BR-IC-12). */
  readonly deliverTo?: PostalAddress;
  readonly dueDate?: IsoDate | undefined;
  readonly paymentTerms?: string | undefined;
  readonly paymentMeans: readonly PaymentMeans[];
  /** What to say when paying (BT-83). */
  readonly remittance?: string | undefined;
  /** The buyer's own references (BT-10, BT-13, BT-12). */
  readonly buyerReference?: string;
  readonly orderReference?: string;
  readonly contractReference?: string;
  /** Documents this one corrects or deducts (BG-3): the original of a credit note, deposits on a final invoice. */
  readonly preceding: readonly DocumentReference[];
  /** What is being amended and why; credit notes only. */
  readonly correctionReason?: string;
  readonly lines: readonly DraftLine[];
  readonly allowances: readonly DocumentAdjustment[];
  readonly charges: readonly DocumentAdjustment[];
  readonly prepayments: readonly Prepayment[];
  readonly rounding?: DecimalString | undefined;
  readonly exemptions: readonly ExemptionReason[];
  readonly legalMarks: readonly LegalMark[];
  /** VAT total in the currency of the tax office, when the document is in another (art. 230; BT-6, BT-111). */
  readonly accounting?: { readonly currency: string; readonly vatTotal: DecimalString; readonly rateWords: string } | undefined;
  readonly notes: readonly { readonly text: string; readonly subjectCode?: string }[];
  readonly job?: JobOnDocument;
}

/** Where a credit note's tax is not taxable × rate: it closes the original to the cent. */
export interface TaxAdjustment {
  readonly category: VatCategory;
  readonly rate: DecimalString | null;
  readonly computed: DecimalString;
  readonly taken: DecimalString;
}

/**
 * A complete document: what the page prints, both XML writers send, and the issuing transaction freezes as JSON. Only plain
 * values, so that it reads back the same.
 */
export interface InvoiceDocument extends InvoiceDraft {
  readonly schemaVersion: 1;
  readonly lines: readonly InvoiceLine[];
  readonly totals: Totals;
  readonly taxAdjustments: readonly TaxAdjustment[];
}

/** A document that was issued: it has its number and date. */
export interface IssuedDocument extends InvoiceDocument {
  readonly number: string;
  readonly issueDate: IsoDate;
}

/** UNTDID 1001 code of the document (BT-3). */
export const documentTypeCodes: Readonly<Record<DocumentKind, string>> = {
  invoice: '380',
  'deposit-invoice': '386',
  'credit-note': '381',
};
