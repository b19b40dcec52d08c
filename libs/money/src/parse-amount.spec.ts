import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatAmount, parseAmount, placeStyles, type PlaceTag, toAmount, type TypingHabits } from './index.ts';

describe('an amount that can be read in one way', () => {
  it.each([
    ['1.234,50', '1234.50'],
    ['1,234.50', '1234.50'],
    ["1'234.50", '1234.50'],
    ['1’234.50', '1234.50'],
    ['1 234,50', '1234.50'],
    ['1\u202f234,50', '1234.50'],
    ['1.234.567', '1234567'],
    ['1.234.567,8', '1234567.8'],
    ['12,34,567.00', '1234567.00'],
    ['12', '12'],
    ['12.5', '12.5'],
    ['12,5', '12.5'],
    ['1234,567', '1234.567'],
    ['0,234', '0.234'],
    ['0.234', '0.234'],
    ['.5', '0.5'],
    ['007', '7'],
    ['12,-', '12'],
    ['12.–', '12'],
    ['€ 12.50', '12.50'],
    ['12,50 €', '12.50'],
    ['EUR12.50', '12.50'],
    ['£1,234.50', '1234.50'],
    ['Fr. 12.50', '12.50'],
    ['12,50 kr.', '12.50'],
    ['12.500 ', '12.500'],
  ])('%s is %s', (typed, amount) => {
    expect(parseAmount(typed, { places: 3, decimalMark: '.' })).toEqual({ ok: true, amount });
  });

  it('drops zeros beyond the places of the field', () => {
    expect(parseAmount('1234.5000')).toEqual({ ok: true, amount: '1234.5' });
  });
});

describe('an amount that can be read in two ways', () => {
  it.each([['1.234'], ['1,234'], ['12.345'], ['999,000'], ['€ 1.234']])('%s is refused with both readings', (typed) => {
    const read = parseAmount(typed);
    expect(read.ok).toBe(false);
    expect(read).toHaveProperty('message', expect.stringMatching(/can mean \d+ or \d+ and a fraction\. Type \d+\.00 for the first/));
  });

  it('is settled by the mark the site writes', () => {
    expect(parseAmount('1.234', { decimalMark: ',' })).toEqual({ ok: true, amount: '1234' });
    expect(parseAmount('1,234', { decimalMark: '.' })).toEqual({ ok: true, amount: '1234' });
    expect(parseAmount('1.234', { decimalMark: '.', places: 3 })).toEqual({ ok: true, amount: '1.234' });
  });
});

describe('an amount that cannot be read', () => {
  it.each<[string, TypingHabits, RegExp]>([
    ['', {}, /Nothing is typed/],
    ['abc', {}, /"a" is no part of an amount/],
    ['€', {}, /has no digits/],
    ['12-50', {}, /"-" is no part of an amount/],
    ['1e3', {}, /"e" is no part of an amount/],
    ['5²', {}, /"²" is no part of an amount/],
    ['5.', {}, /no plain digits after its last mark/],
    ['1.23.45', {}, /not in groups of three/],
    ['1,23,4.50', {}, /not in groups of three/],
    ['1.234,5.6', {}, /not in groups of three/],
    ['1 234.567,00', {}, /not in groups of three/],
    ['12.345678', { places: 2 }, /has 6 decimals, the field takes 2/],
    ['1.234', { decimalMark: '.' }, /has 3 decimals, the field takes 2/],
    ['-5', {}, /below zero/],
    ['€ -5', {}, /below zero/],
    ['$12', { currency: 'EUR' }, /kept in EUR, but "\$" was typed/],
    ['1234567890123', {}, /too large: at most 12 digits/],
  ])('%s is refused in words', (typed, habits, words) => {
    const read = parseAmount(typed, habits);
    expect(read).toEqual({ ok: false, message: expect.stringMatching(words) });
  });

  it('takes a minus only where the field does', () => {
    expect(parseAmount('−5,00', { negative: true })).toEqual({ ok: true, amount: '-5.00' });
    expect(parseAmount('€ -5.00', { negative: true, currency: 'EUR' })).toEqual({ ok: true, amount: '-5.00' });
    expect(parseAmount('-0', { negative: true })).toEqual({ ok: true, amount: '0' });
  });
});

it('reads back every amount that a place style shows', () => {
  const tags = Object.keys(placeStyles) as PlaceTag[];
  fc.assert(
    fc.property(fc.integer({ min: -99_999_999, max: 99_999_999 }), fc.constantFrom(...tags), (cents, tag) => {
      const amount = toAmount((cents / 100).toFixed(2));
      const shown = formatAmount(amount, { ...placeStyles[tag], places: 2, currencyText: '€' });
      expect(parseAmount(shown, { negative: true, currency: 'EUR' })).toEqual({ ok: true, amount });
    }),
  );
});
