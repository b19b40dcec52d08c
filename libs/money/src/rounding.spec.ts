import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { Decimal, percentOf, plainDecimal, roundHalfAway, roundQuotient, sumAmounts, toAmount, toDecimal } from './index.ts';

describe('rounding half away from zero', () => {
  // Published: CEN TC 434 examples BIS3_Invoice_positive, BIS3_Invoice_negativ and ubl-tc434-example2
  // (ConnectingEurope/eInvoicing-EN16931, commit b6c9e06, EUPL-1.2), read.
  it.each([
    ['156435.885', '156435.89'],
    ['-156435.885', '-156435.89'],
    ['365.125', '365.13'],
    ['190.8711', '190.87'],
    ['9.7377', '9.74'],
    ['10.9938', '10.99'],
  ])('%s becomes %s, as published', (exact, rounded) => {
    expect(toAmount(exact)).toBe(rounded);
  });

  it.each([
    ['0.005', '0.01'],
    ['-0.005', '-0.01'],
    ['0.0049999999', '0.00'],
    ['-0.004', '0.00'],
    ['1.005', '1.01'],
    ['2.675', '2.68'],
  ])('%s becomes %s, where floats and XPath round() go wrong', (exact, rounded) => {
    expect(toAmount(exact)).toBe(rounded);
  });

  it('is odd: the magnitude decides, the sign follows', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 ** 12 }), (thousandths) => {
        const exact = new Decimal(thousandths).div(1000);
        expect(roundHalfAway(exact.negated(), 2).toFixed(2)).toBe(roundHalfAway(exact, 2).negated().toFixed(2));
      }),
    );
  });

  it('agrees with whole-number arithmetic', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 15n }), fc.bigInt({ min: 1n, max: 10n ** 9n }), (dividend, divisor) => {
        const expected = (2n * dividend * 100n + divisor) / (2n * divisor);
        const rounded = roundQuotient(new Decimal(dividend.toString()), new Decimal(divisor.toString()), { places: 2 });
        expect(rounded.times(100).toFixed()).toBe(expected.toString());
      }),
    );
  });
});

describe('small helpers', () => {
  it('keeps the exact sum', () => {
    expect(sumAmounts(['0.1', '0.2']).toFixed()).toBe('0.3');
    expect(sumAmounts([]).toFixed()).toBe('0');
  });

  it('gives equal numbers equal texts', () => {
    expect(plainDecimal('21.00')).toBe('21');
    expect(plainDecimal('-0.00')).toBe('0');
    expect(plainDecimal(new Decimal('1e-8'))).toBe('0.00000001');
  });

  it('takes a percentage to the cent', () => {
    expect(percentOf('250.00', '2.5').toFixed(2)).toBe('6.25');
    expect(percentOf('0.50', '1').toFixed(2)).toBe('0.01');
  });

  it('refuses what is no plain decimal', () => {
    expect(() => toDecimal('1e3')).toThrow('not a plain decimal');
    expect(() => toDecimal('NaN')).toThrow('not a plain decimal');
  });

  it('leaves the settings of the library itself alone', async () => {
    const { Decimal: untouched } = await import('decimal.js');
    expect(untouched.precision).toBe(20);
    expect(Decimal.precision).toBe(40);
  });
});
