import { type DecimalString } from '#libs/money';
import { type VatCategory } from '../totals/vat-category.ts';

/** What a line is for; groups the printed page and the owner's figures. */
export type LineKind = 'labour' | 'part' | 'coolant' | 'consumable' | 'waste' | 'deposit' | 'correction' | 'other';

/** Money taken off or put on, with its ground (BR-33, BR-38, BR-42, BR-44). */
export interface PriceAdjustment {
  readonly amount: DecimalString;
  readonly reason: string;
  /** UNTDID 5189 for allowances, 7161 for charges. */
  readonly reasonCode?: string;
  /** Where the amount came from a percentage: the percentage and what it was taken of. */
  readonly percent?: DecimalString;
  readonly baseAmount?: DecimalString;
}

export interface TaxTreatment {
  readonly vatCategory: VatCategory;
  /** Per cent; null where the category has no rate of its own. */
  readonly vatRate: DecimalString | null;
}

/** A document-level allowance or charge (BG-20, BG-21). */
export type DocumentAdjustment = PriceAdjustment & TaxTreatment;

/** A line as drafted: everything but its net amount, which is computed. */
export interface DraftLine extends TaxTreatment {
  /** Unique in the document (BT-126). */
  readonly id: string;
  readonly kind: LineKind;
  /** BT-153. */
  readonly name: string;
  /** BT-154. */
  readonly description?: string;
  /** Seller's article number (BT-155). */
  readonly itemNumber?: string;
  readonly quantity: DecimalString;
  /** UN/ECE Recommendation 20 code (BT-130); see {@link units}. */
  readonly unit: string;
  /** Before tax, after price discounts (BT-146). */
  readonly unitPrice: DecimalString;
  /** Units the price is for (BT-149), 1 unless said. */
  readonly baseQuantity?: DecimalString;
  readonly allowances?: readonly PriceAdjustment[];
  readonly charges?: readonly PriceAdjustment[];
  /** On a credit note: the line of the original that is taken back, and how much of its quantity. */
  readonly corrects?: { readonly lineId: string; readonly quantity: DecimalString };
}

export interface InvoiceLine extends DraftLine {
  /** BT-131. */
  readonly net: DecimalString;
}
