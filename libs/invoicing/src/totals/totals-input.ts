import { type DecimalString } from '#libs/money';
import { type VatCategory } from './vat-category.ts';

export interface TotalsLineInput {
  readonly quantity: DecimalString;
  readonly unitPrice: DecimalString;
  /** Units the price is for (BT-149), 1 unless said: 15.24 per 12. */
  readonly baseQuantity?: DecimalString;
  readonly allowances?: readonly DecimalString[];
  readonly charges?: readonly DecimalString[];
  readonly vatCategory: VatCategory;
  /** Per cent; left out, null or zero where the category has none. */
  readonly vatRate?: DecimalString | null;
}

export interface TotalsAdjustmentInput {
  readonly amount: DecimalString;
  readonly vatCategory: VatCategory;
  readonly vatRate?: DecimalString | null;
}

export interface TotalsInput {
  readonly lines: readonly TotalsLineInput[];
  readonly allowances?: readonly TotalsAdjustmentInput[];
  readonly charges?: readonly TotalsAdjustmentInput[];
  /** Money received without a tax document (BT-113). */
  readonly prepaid?: DecimalString;
  /** Cents added or taken to make the sum payable in coins (BT-114). */
  readonly rounding?: DecimalString;
}

/** One row of the VAT table (BG-23). */
export interface VatRow {
  readonly category: VatCategory;
  /** Shortest text of the rate ('21', '5.5'); null for category O, which has none. */
  readonly rate: DecimalString | null;
  readonly taxable: DecimalString;
  readonly tax: DecimalString;
}

/** Sums of a document, each with two decimals. */
export interface Totals {
  /** BT-131 per line. */
  readonly lines: readonly { readonly net: DecimalString }[];
  /** BT-106. */
  readonly lineTotal: DecimalString;
  /** BT-107. */
  readonly allowanceTotal: DecimalString;
  /** BT-108. */
  readonly chargeTotal: DecimalString;
  /** BT-109. */
  readonly taxExclusive: DecimalString;
  readonly vat: readonly VatRow[];
  /** BT-110. */
  readonly vatTotal: DecimalString;
  /** BT-112. */
  readonly taxInclusive: DecimalString;
  /** BT-113. */
  readonly prepaid: DecimalString;
  /** BT-114. */
  readonly rounding: DecimalString;
  /** BT-115. */
  readonly payable: DecimalString;
}
