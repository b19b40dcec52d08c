import { type Decimal, type DecimalString } from './decimal.ts';
import { type MoneyStyle, type NumberMarks } from './money-style.ts';
import { toAmount } from './to-amount.ts';

/**
 * Shows an amount the way a place writes it, from data given: no engine locale is asked, so a document printed today and
 * one printed in ten years look the same.
 *
 * @param amount rounded half away from zero to the style's places
 * @param style marks, grouping and currency; see {@link placeStyles} for ready ones
 * @example formatAmount('1234.5', { ...placeStyles['de-DE'], places: 2, currencyText: '€' }) // '1.234,50 €'
 */
export function formatAmount(amount: Decimal | DecimalString, style: MoneyStyle): string {
  const text = toAmount(amount, style.places);
  const negative = text.startsWith('-');
  const [whole = '0', fraction = ''] = text.replace('-', '').split('.');
  const number = groupDigits(whole, style) + (fraction === '' ? '' : style.decimalMark + fraction);
  return withCurrency(number, style, { minus: negative ? '-' : '' });
}

function withCurrency(number: string, style: MoneyStyle, { minus }: { minus: string }): string {
  if (style.currencyText === null) return minus + number;
  // A code or word glued to the digits is unreadable, so letters always get a gap.
  const gap = style.currencyGap === '' && /\p{L}$/u.test(style.currencyText) ? '\u00a0' : style.currencyGap;
  return style.currencyFirst ? `${minus}${style.currencyText}${gap}${number}` : `${minus}${number}${gap}${style.currencyText}`;
}

function groupDigits(whole: string, marks: NumberMarks): string {
  if (whole.length < marks.groupFrom) return whole;
  if (marks.grouping === 'threes') return whole.replace(/\B(?=(\d{3})+$)/g, marks.groupMark);
  const head = whole.slice(0, -3).replace(/\B(?=(\d{2})+$)/g, marks.groupMark);
  return head + marks.groupMark + whole.slice(-3);
}
