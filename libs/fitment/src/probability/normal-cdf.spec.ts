import { describe, expect, it } from '@jest/globals';
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { normalCdf } from './normal-cdf.ts';
import { normalInterval } from './normal-interval.ts';
import { normalQuantile } from './normal-quantile.ts';

// Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, as reprinted with 16 digits in the test values of
// published statistics libraries (second-hand).
const published: readonly (readonly [number, number])[] = [
  [0, 0.5],
  [0.5, 0.6914624612740131],
  [0.6, 0.725746882249927],
  [0.7, 0.758036347776927],
  [0.8, 0.7881446014166033],
  [0.9, 0.8159398746532405],
  [1, 0.8413447460685429],
  [1.5, 0.9331927987311419],
  [1.96, 0.9750021048517796],
  [2, 0.9772498680518208],
  [2.5, 0.993790334674224],
  [3, 0.9986501019683699],
  [3.5, 0.9997673709209645],
  [4, 0.9999683287581669],
];

/** Φ by the alternating Taylor series with 80 digits: another way than the code under test. */
function preciseCdf(z: number): Decimal {
  const Precise = Decimal.clone({ precision: 80 });
  const x = new Precise(z);
  let term = x;
  let sum = x;
  for (let k = 1; term.abs().gt('1e-70'); k += 1) {
    term = term
      .times(x)
      .times(x)
      .div(-2 * k);
    sum = sum.plus(term.div(2 * k + 1));
  }
  return sum.div(Precise.acos(-1).times(2).sqrt()).plus(0.5);
}

describe('normalCdf', () => {
  it.each(published)('gives the published value at %p', (z, probability) => {
    expect(Math.abs(normalCdf(z) - probability)).toBeLessThan(1e-15);
    expect(Math.abs(normalCdf(-z) - (1 - probability))).toBeLessThan(1e-15);
  });

  it('agrees with an 80-digit series to 1e-15, and in the lower tail to 1e-12 of the value itself (computed)', () => {
    for (let z = -8; z <= 8; z += 0.0625) {
      const precise = preciseCdf(z);
      expect(precise.minus(normalCdf(z)).abs().toNumber()).toBeLessThan(1e-15);
      if (z < 0) expect(precise.minus(normalCdf(z)).div(precise).abs().toNumber()).toBeLessThan(1e-12);
    }
  });

  it('keeps far tails: Φ(−10) = 7.619853024160527e−24 (computed)', () => {
    expect(normalCdf(-10) / 7.619853024160527e-24).toBeCloseTo(1, 12);
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
  });

  it('refuses NaN', () => {
    expect(() => normalCdf(Number.NaN)).toThrow(RangeError);
  });

  it('never falls and is symmetric', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true }), (z, step) => {
        expect(normalCdf(z + step)).toBeGreaterThanOrEqual(normalCdf(z) - 2e-16);
        expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 14);
      }),
    );
  });
});

describe('normalInterval', () => {
  it('loses no digits in the upper tail', () => {
    expect(normalInterval(10, 11)).toBe(normalInterval(-11, -10));
    expect(normalInterval(10, 11)).toBeGreaterThan(0);
  });
});

describe('normalQuantile', () => {
  // Widely published one-sided and two-sided 95 % points (second-hand); the last one computed with 30 digits.
  it.each([
    [0.5, 0],
    [0.95, 1.6448536269514722],
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489004],
    [0.0000001, -5.199337582192817],
  ])('of %p is %p', (probability, z) => {
    expect(normalQuantile(probability)).toBeCloseTo(z, 12);
  });

  it.each([0, 1, -0.1, 1.1, Number.NaN])('refuses %p', (probability) => {
    expect(() => normalQuantile(probability)).toThrow(RangeError);
  });
});
