import { type DecimalString, plainDecimal } from '#libs/money';
import { type VatCategory, vatCategories } from './vat-category.ts';

/** Category and rate as they are compared: rates as numbers, so 21 and 21.00 are one; none for category O. */
export interface VatKey {
  readonly category: VatCategory;
  readonly rate: DecimalString | null;
}

/**
 * The row of the VAT table that an entry belongs to.
 *
 * @example vatKey('S', '21.00') // { category: 'S', rate: '21' }
 * @example vatKey('O', '0') // { category: 'O', rate: null }
 */
export function vatKey(category: VatCategory, rate: DecimalString | null | undefined): VatKey {
  if (vatCategories[category].rate === 'none') return { category, rate: null };
  return { category, rate: rate === null || rate === undefined || rate === '' ? '0' : plainDecimal(rate) };
}

/** The key as text, for maps. */
export function vatKeyText(key: VatKey): string {
  return `${key.category} ${key.rate ?? ''}`;
}

/** The key in words, for messages: 'VAT 20 %' or 'VAT category O (outside the scope of VAT)'. */
export function vatKeyWords(key: VatKey): string {
  return key.category === 'S' ? `VAT ${key.rate ?? ''} %` : `VAT category ${key.category} (${vatCategories[key.category].words})`;
}
