import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { fitCurve } from './fit-curve.ts';
import { solve } from './solve.ts';

const SKIP = new Uint8Array(60);
const line = (value: (index: number) => number): Float64Array => Float64Array.from({ length: 60 }, (_, index) => value(index));

describe('least squares with signs', () => {
  it('finds the weights of an exact curve', () => {
    const terms = [
      { values: line((index) => index), notNegative: false },
      { values: line((index) => index ** 2), notNegative: true },
    ];
    const fit = fitCurve(
      line((index) => 20 + 3 * index + 0.5 * index ** 2),
      terms,
      { from: 0, to: 59, skip: SKIP },
    );
    expect(fit?.level).toBeCloseTo(20, 6);
    expect(fit?.weights[0]).toBeCloseTo(3, 6);
    expect(fit?.weights[1]).toBeCloseTo(0.5, 6);
    expect(fit?.rms).toBeLessThan(1e-4);
  });

  it('never gives a bound term a negative weight', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 60, maxLength: 60 }), (values) => {
        const terms = [0, 1, 2].map((shift) => ({ values: line((index) => Math.sin(index / (5 + shift))), notNegative: true }));
        const fit = fitCurve(Float64Array.from(values), terms, { from: 0, to: 59, skip: SKIP });
        expect(fit?.weights.every((weight) => weight >= 0)).toBe(true);
      }),
    );
  });

  it('solves what it was made from, and refuses columns that are alike', () => {
    expect(
      solve(
        [
          [2, 1],
          [1, 3],
        ],
        [4, 7],
      ),
    ).toEqual([1, 2]);
    expect(
      solve(
        [
          [1, 2],
          [2, 4],
        ],
        [3, 6],
      ),
    ).toBeNull();
  });
});
