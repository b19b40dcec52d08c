import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { niceRange } from './nice-range.ts';
import { scaleTicks } from './scale-ticks.ts';

describe('scaleTicks', () => {
  it.each([
    { low: 0, high: 103, maxCount: 6, ticks: [0, 20, 40, 60, 80, 100] },
    { low: -50, high: 150, maxCount: 6, ticks: [-50, 0, 50, 100, 150] },
    { low: 0, high: 0.3, maxCount: 5, ticks: [0, 0.1, 0.2, 0.3] },
    { low: 45.2, high: 51, maxCount: 8, ticks: [46, 47, 48, 49, 50, 51] },
    { low: 100, high: 0, maxCount: 3, ticks: [0, 50, 100] },
  ])('marks $low to $high in $maxCount or fewer', ({ ticks, ...spec }) => {
    expect(scaleTicks(spec).ticks).toEqual(ticks);
  });

  it('takes the steps of a clock where they are given', () => {
    expect(scaleTicks({ low: 0, high: 100, maxCount: 5, steps: [5, 10, 15, 30, 60] }).ticks).toEqual([0, 30, 60, 90]);
  });

  it('falls back to round steps where the given ones are too fine', () => {
    expect(scaleTicks({ low: 0, high: 1000, maxCount: 5, steps: [1, 2] }).step).toBe(500);
  });

  it('divides a step into fifths or, where it starts with 2, into fourths', () => {
    expect(scaleTicks({ low: 0, high: 10, maxCount: 3 }).minorTicks).toEqual([1, 2, 3, 4, 6, 7, 8, 9]);
    expect(scaleTicks({ low: 0, high: 4, maxCount: 3 }).minorTicks).toEqual([0.5, 1, 1.5, 2.5, 3, 3.5]);
  });

  it('marks a scale of no length without ending in a loop', () => {
    expect(scaleTicks({ low: 5, high: 5, maxCount: 5 }).ticks.length).toBeLessThanOrEqual(5);
  });

  const value = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.double({ min: -1e6, max: 1e6, noNaN: true }));

  it('marks any finite range with at most so many round figures inside it', () => {
    fc.assert(
      fc.property(value, value, fc.integer({ min: 2, max: 30 }), (a, b, maxCount) => {
        const { ticks, step } = scaleTicks({ low: a, high: b, maxCount });
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(step).toBeGreaterThan(0);
        expect(ticks.every((tick) => Number.isFinite(tick))).toBe(true);
        if (Math.max(Math.abs(a), Math.abs(b)) > 1e300) return;
        expect(ticks.length).toBeLessThanOrEqual(maxCount);
        expect(ticks.every((tick) => tick >= low - step * 1e-6 && tick <= high + step * 1e-6)).toBe(true);
        const mantissa = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
        expect([1, 2, 5, 10].some((round) => Math.abs(mantissa - round) < 1e-6)).toBe(true);
      }),
    );
  });

  it('leaves one mark with room for four, two with room for six', () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000, max: 10_000 }), fc.integer({ min: 1, max: 10_000 }), (low, length) => {
        expect(scaleTicks({ low, high: low + length, maxCount: 4 }).ticks.length).toBeGreaterThanOrEqual(1);
        expect(scaleTicks({ low, high: low + length, maxCount: 6 }).ticks.length).toBeGreaterThanOrEqual(2);
      }),
    );
  });
});

describe('niceRange', () => {
  it('starts and ends on a mark', () => {
    expect(niceRange({ low: 3, high: 91, step: 20 })).toEqual({ low: 0, high: 100 });
    expect(niceRange({ low: -27, high: 100, step: 50 })).toEqual({ low: -50, high: 100 });
  });
});
