/**
 * VAT categories of EN 16931 (subset of UNTDID 5305) that a workshop meets. Other countries' sales taxes use the same:
 * S for any rate above zero, O for none.
 */
export type VatCategory = 'S' | 'Z' | 'E' | 'AE' | 'K' | 'G' | 'O';

export interface VatCategoryRule {
  readonly words: string;
  /** `above-zero`: BR-S-05. `zero`: BR-Z-05, BR-E-05, BR-AE-05, BR-IC-05, BR-G-05. `none`: BR-O-05. */
  readonly rate: 'above-zero' | 'zero' | 'none';
  /** Whether the document must say why no VAT is charged (BR-E-10 … BR-O-10) or must not (BR-S-10, BR-Z-10). */
  readonly reason: 'needed' | 'forbidden';
  /** VATEX code and text that always fit; E has none, since its ground differs from case to case. */
  readonly standardReason: { readonly code: string; readonly text: string } | null;
}

/** Source: EN 16931 validation rules of CEN TC 434, abstract model, read; VATEX codes from memory. */
export const vatCategories: Readonly<Record<VatCategory, VatCategoryRule>> = {
  S: { words: 'standard or reduced rate', rate: 'above-zero', reason: 'forbidden', standardReason: null },
  Z: { words: 'zero rate', rate: 'zero', reason: 'forbidden', standardReason: null },
  E: { words: 'exempt', rate: 'zero', reason: 'needed', standardReason: null },
  AE: { words: 'reverse charge', rate: 'zero', reason: 'needed', standardReason: { code: 'VATEX-EU-AE', text: 'Reverse charge' } },
  K: {
    words: 'supply to another EU country',
    rate: 'zero',
    reason: 'needed',
    standardReason: { code: 'VATEX-EU-IC', text: 'Intra-Community supply' },
  },
  G: { words: 'export', rate: 'zero', reason: 'needed', standardReason: { code: 'VATEX-EU-G', text: 'Export outside the EU' } },
  O: {
    words: 'outside the scope of VAT',
    rate: 'none',
    reason: 'needed',
    standardReason: { code: 'VATEX-EU-O', text: 'Not subject to VAT' },
  },
};

export function isVatCategory(value: unknown): value is VatCategory {
  return typeof value === 'string' && Object.hasOwn(vatCategories, value);
}
