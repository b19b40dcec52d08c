import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { linearScale } from './linear-scale.ts';

describe('linearScale', () => {
  it('is in proportion, either way round', () => {
    expect(linearScale({ low: 10, high: 70, start: 0, end: 600 })(40)).toBe(300);
    expect(linearScale({ low: 0, high: 100, start: 500, end: 0 })(25)).toBe(375);
  });

  it('maps a scale of no length to its middle', () => {
    expect(linearScale({ low: 5, high: 5, start: 100, end: 200 })(5)).toBe(150);
  });

  it('is finite for any finite values', () => {
    const value = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(value, value, value, (low, high, at) => {
        expect(Number.isFinite(linearScale({ low, high, start: 0, end: 300 })(at))).toBe(true);
      }),
    );
  });
});
