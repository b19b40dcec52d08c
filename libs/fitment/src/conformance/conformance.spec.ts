import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { FitmentInputError } from '../fitment-input-error.ts';
import { conformance } from './conformance.ts';

const lathe = { nominal: 10, tolerance: 0.05, standardUncertainty: 0.02 };
const figure = fc.double({ min: -1e4, max: 1e4, noNaN: true });
const width = fc.double({ min: 0, max: 100, noNaN: true });

describe('10.00 ± 0.05 with u = 0.02 (computed; rule ISO 14253-1, from memory)', () => {
  it('accepts from 9.983 to 10.017', () => {
    const { acceptance } = conformance({ ...lathe, measured: 10 });
    expect(acceptance?.low).toBeCloseTo(9.983, 4);
    expect(acceptance?.high).toBeCloseTo(10.017, 4);
  });

  it.each([
    [10.017, 0.95, 'conforms'],
    [10.018, 0.945, 'not-proven'],
    // A page that calls this one rejected is wrong: 10.03 is inside the limit.
    [10.03, 0.841, 'not-proven'],
    [10.05, 0.5, 'not-proven'],
    [10.0828, 0.0503, 'not-proven'],
    [10.0829, 0.05, 'does-not-conform'],
    [9.9171, 0.05, 'does-not-conform'],
    [9.9172, 0.0503, 'not-proven'],
  ])('%p has probability %p: %s', (measured, probability, verdict) => {
    const answer = conformance({ ...lathe, measured });
    expect(answer.conformanceProbability).toBeCloseTo(probability, 3);
    expect(answer.verdict).toBe(verdict);
  });
});

describe('instruments at the ends', () => {
  it('a steel rule (U 0.5 mm) can never prove ± 0.3 mm', () => {
    const answer = conformance({ nominal: 54, tolerance: 0.3, measured: 54, standardUncertainty: 0.25 });
    expect(answer).toMatchObject({ verdict: 'not-proven', acceptance: null });
  });

  it.each([
    [10.05, 'conforms'],
    [9.95, 'conforms'],
    [10.0500001, 'does-not-conform'],
  ])('compares plainly when u is 0: %p %s', (measured, verdict) => {
    const answer = conformance({ ...lathe, standardUncertainty: 0, measured });
    expect(answer.verdict).toBe(verdict);
    expect(answer.acceptance).toEqual({ low: 9.95, high: 10.05 });
  });

  it('with no tolerance and u = 0 only the figure itself conforms', () => {
    expect(conformance({ nominal: 82, tolerance: 0, measured: 82, standardUncertainty: 0 }).verdict).toBe('conforms');
    expect(conformance({ nominal: 82, tolerance: 0, measured: 83, standardUncertainty: 0 }).verdict).toBe('does-not-conform');
  });
});

describe('refusals', () => {
  it('names every bad figure at once', () => {
    const question = { nominal: Number.NaN, tolerance: -1, measured: 1, standardUncertainty: Number.POSITIVE_INFINITY };
    expect(() => conformance(question)).toThrow(FitmentInputError);
    try {
      conformance(question);
    } catch (error) {
      const problems = error instanceof FitmentInputError ? error.problems : [];
      expect(problems.map((problem) => problem.field)).toEqual(['nominal', 'tolerance', 'standardUncertainty']);
      expect(problems[1]?.message).toBe('The tolerance is -1: give a number of 0 or more.');
    }
  });
});

describe('properties', () => {
  it('a reading conforms exactly when it lies in the acceptance interval; never NaN', () => {
    fc.assert(
      fc.property(figure, width, figure, width, (nominal, tolerance, measured, standardUncertainty) => {
        const { verdict, conformanceProbability, acceptance } = conformance({ nominal, tolerance, measured, standardUncertainty });
        expect(conformanceProbability).toBeGreaterThanOrEqual(0);
        expect(conformanceProbability).toBeLessThanOrEqual(1);
        const slack = 1e-9 * (1 + Math.abs(nominal));
        if (verdict === 'conforms') {
          expect(acceptance).not.toBeNull();
          expect(measured).toBeGreaterThanOrEqual((acceptance?.low ?? 0) - slack);
          expect(measured).toBeLessThanOrEqual((acceptance?.high ?? 0) + slack);
        } else if (acceptance !== null) {
          const isInside = measured > acceptance.low + slack && measured < acceptance.high - slack;
          expect(isInside).toBe(false);
        }
      }),
    );
  });

  it('any reading inside the acceptance interval conforms', () => {
    fc.assert(
      fc.property(
        figure,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (nominal, tolerance, at) => {
          const standardUncertainty = tolerance / 3;
          const low = conformance({ nominal, tolerance, measured: nominal, standardUncertainty }).acceptance;
          if (low === null) throw new Error('an instrument of a third of the tolerance can prove');
          const measured = low.low + at * (low.high - low.low) * 0.999 + (low.high - low.low) * 0.0005;
          expect(conformance({ nominal, tolerance, measured, standardUncertainty }).verdict).toBe('conforms');
        },
      ),
    );
  });
});
