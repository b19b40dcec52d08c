import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { applyMarkup, checkMarkupRule, type MarkupRule } from './index.ts';

const bands: MarkupRule = {
  kind: 'bands',
  bands: [
    { upToCost: '10', percent: '80' },
    { upToCost: '50', percent: '50' },
    { upToCost: null, percent: '30' },
  ],
};

describe('a selling price from a cost', () => {
  it.each<[string, MarkupRule, string]>([
    ['20.00', { kind: 'percent', percent: '30' }, '26.00'],
    ['20.00', { kind: 'margin', percent: '20' }, '25.00'],
    ['20.00', { kind: 'amount', amount: '4.5' }, '24.50'],
    ['19.99', { kind: 'percent', percent: '33', roundTo: '0.05' }, '26.60'],
    ['0.03', { kind: 'percent', percent: '50' }, '0.05'],
    ['10.00', bands, '18.00'],
    ['10.01', bands, '18.00'],
    ['40.00', bands, '60.00'],
    ['51.00', bands, '75.00'],
    ['100.00', bands, '130.00'],
    ['0.00', bands, '0.00'],
  ])('%s by %j is %s', (cost, rule, price) => {
    expect(applyMarkup(cost, rule)).toBe(price);
  });

  it('never falls when the cost rises, across the edges of bands too', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 500 }), (cents, more) => {
        const cheap = applyMarkup((cents / 100).toFixed(2), bands);
        const dear = applyMarkup(((cents + more) / 100).toFixed(2), bands);
        expect(Number(dear)).toBeGreaterThanOrEqual(Number(cheap));
      }),
    );
  });

  it('throws on a rule that was not checked', () => {
    expect(() => applyMarkup('1', { kind: 'margin', percent: '100' })).toThrow('no selling price');
  });
});

describe('a mark-up rule', () => {
  it('is fine', () => {
    expect(checkMarkupRule(bands)).toEqual([]);
    expect(checkMarkupRule({ kind: 'percent', percent: '0' })).toEqual([]);
  });

  it.each<[MarkupRule, RegExp]>([
    [{ kind: 'percent', percent: '1,5' }, /not a number/],
    [{ kind: 'percent', percent: '-5' }, /below zero/],
    [{ kind: 'margin', percent: '100' }, /no selling price/],
    [{ kind: 'percent', percent: '5', roundTo: '0' }, /no step to round to/],
    [{ kind: 'percent', percent: '5', roundTo: '0.001' }, /finer than a cent/],
    [{ kind: 'bands', bands: [] }, /has no band/],
    [{ kind: 'bands', bands: [{ upToCost: '10', percent: '80' }] }, /last band has a top/],
    [
      {
        kind: 'bands',
        bands: [
          { upToCost: null, percent: '80' },
          { upToCost: null, percent: '30' },
        ],
      },
      /has no top/,
    ],
    [
      {
        kind: 'bands',
        bands: [
          { upToCost: '50', percent: '80' },
          { upToCost: '10', percent: '50' },
          { upToCost: null, percent: '30' },
        ],
      },
      /rising order/,
    ],
  ])('%j is refused in words', (rule, words) => {
    expect(checkMarkupRule(rule)).toEqual([expect.stringMatching(words)]);
  });
});
