import { describe, expect, it } from '@jest/globals';
import { currencies, formatAmount, placeStyles, type PlaceTag } from './index.ts';

describe('showing an amount', () => {
  it.each<[PlaceTag, string, string]>([
    ['en-GB', '€', '€1,234.50'],
    ['de-DE', '€', '1.234,50\u00a0€'],
    ['fr-FR', '€', '1\u202f234,50\u00a0€'],
    ['de-CH', 'CHF', 'CHF\u00a01’234.50'],
    ['es-ES', '€', '1234,50\u00a0€'],
    ['en-IE', 'EUR', 'EUR\u00a01,234.50'],
  ])('%s', (tag, currencyText, shown) => {
    expect(formatAmount('1234.5', { ...placeStyles[tag], places: 2, currencyText })).toBe(shown);
  });

  it('groups the Indian way, rounds, and keeps the minus in front', () => {
    expect(formatAmount('1234567.891', { ...placeStyles['en-IN'], places: 2, currencyText: '₹' })).toBe('₹12,34,567.89');
    expect(formatAmount('-1234567.891', { ...placeStyles['en-GB'], places: 0, currencyText: '£' })).toBe('-£1,234,568');
    expect(formatAmount('-0.001', { ...placeStyles['en-GB'], places: 2, currencyText: null })).toBe('0.00');
  });

  // Outside check: the CLDR data of the engine that runs this test, through Intl. Spaces of all kinds count as one, and so
  // do both apostrophes; whether 1234 is grouped changed between CLDR versions and is left out.
  const sameMarks = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ').replace('’', "'");
  const tags = Object.keys(placeStyles) as PlaceTag[];

  it.each(tags)('writes numbers in %s as CLDR does', (tag) => {
    const intl = new Intl.NumberFormat(tag, { minimumFractionDigits: 2 });
    for (const amount of ['0.05', '999.50', '12345.60', '123456.78']) {
      const shown = formatAmount(amount, { ...placeStyles[tag], places: 2, currencyText: null });
      expect(sameMarks(shown)).toBe(sameMarks(intl.format(Number(amount))));
    }
  });

  it.each(tags)('puts the currency in %s where CLDR does', (tag) => {
    const intl = new Intl.NumberFormat(tag, { style: 'currency', currency: 'EUR', currencyDisplay: 'code' });
    const shown = formatAmount('12345.60', { ...placeStyles[tag], places: 2, currencyText: 'EUR' });
    expect(sameMarks(shown)).toBe(sameMarks(intl.format(12345.6)));
  });

  // CLDR shows whole forints; ISO 4217 keeps two decimals, and so do invoices.
  const cldrAgrees = currencies.filter((currency) => currency.code !== 'HUF');
  it.each(cldrAgrees.map((currency) => [currency.code, currency.minorDigits]))('%s has %d decimals in CLDR too', (code, minorDigits) => {
    const intl = new Intl.NumberFormat('en', { style: 'currency', currency: String(code) });
    expect(intl.resolvedOptions().maximumFractionDigits).toBe(minorDigits);
  });
});
