import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { allocate, sumAmounts } from './index.ts';

describe('sharing an amount', () => {
  it.each([
    ['100.00', ['1', '1', '1'], ['33.34', '33.33', '33.33']],
    ['-100.00', ['1', '1', '1'], ['-33.34', '-33.33', '-33.33']],
    ['0.05', ['3', '7'], ['0.02', '0.03']],
    ['10.00', ['0', '1'], ['0.00', '10.00']],
    ['0.00', ['2', '3'], ['0.00', '0.00']],
    ['0.01', ['1', '1'], ['0.01', '0.00']],
  ])('%s by %j is %j', (total, weights, shares) => {
    expect(allocate(total, weights)).toEqual(shares);
  });

  it('takes other places', () => {
    expect(allocate('10', ['1', '2'], { places: 0 })).toEqual(['3', '7']);
  });

  it('never loses or makes a cent, and no share is a whole cent away from its exact part', () => {
    const weights = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 30 }).filter((list) => list.some(Boolean));
    fc.assert(
      fc.property(fc.integer({ min: -(10 ** 9), max: 10 ** 9 }), weights, (cents, list) => {
        const total = (cents / 100).toFixed(2);
        const shares = allocate(total, list.map(String));
        expect(sumAmounts(shares).equals(sumAmounts([total]))).toBe(true);
        const all = list.reduce((sum, weight) => sum + weight, 0);
        for (const [index, share] of shares.entries())
          expect(Math.abs(Number(share) * 100 - (cents * (list[index] ?? 0)) / all)).toBeLessThan(1 + 1e-6);
      }),
    );
  });

  it('says why it cannot share', () => {
    expect(() => allocate('1.00', [])).toThrow('need weights');
    expect(() => allocate('1.00', ['0', '0'])).toThrow('need weights');
    expect(() => allocate('1.00', ['2', '-1'])).toThrow('need weights');
    expect(() => allocate('1.005', ['1'])).toThrow('more decimals');
  });
});
