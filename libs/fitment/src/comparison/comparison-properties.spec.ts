import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Criticality, type ComparisonQuestion, type FeatureValue } from './comparison.types.ts';
import { comparison } from './comparison.ts';

const keys = ['a', 'b', 'c', 'd'];
const criticality = fc.constantFrom<Criticality>('sealing', 'function', 'advisory');
const figure = fc.oneof(fc.integer({ min: 50, max: 56 }), fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constant(0));
const word = fc.constantFrom('x', 'y', 'z');
const spread = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 5, noNaN: true }));
const valueOf = (kind: 'category' | 'number'): fc.Arbitrary<FeatureValue> => (kind === 'number' ? figure : word);

/** Any comparison that passes the checks, odd ones included. */
const anyQuestion: fc.Arbitrary<ComparisonQuestion> = fc
  .array(
    fc.record({
      kind: fc.constantFrom('category' as const, 'number' as const),
      criticality,
      tolerance: spread,
      standardUncertainty: spread,
    }),
    {
      minLength: 1,
      maxLength: keys.length,
    },
  )
  .chain((shapes) => {
    const features = shapes.map((shape, index) => ({ ...shape, key: keys[index] ?? '' }));
    const values = fc.tuple(...features.map(({ key, kind }) => fc.option(valueOf(kind)).map((value) => [key, value] as const)));
    const reading = fc
      .constantFrom(...features)
      .chain(({ key, kind }) => fc.record({ key: fc.constant(key), value: fc.option(valueOf(kind)), standardUncertainty: spread }));
    return fc.record({
      features: fc.constant(features),
      nonePrior: fc.constantFrom(0, 0.05, 0.5),
      candidates: fc
        .array(fc.record({ prior: fc.constantFrom(undefined, 1, 1e6, 1e-6), values }), { minLength: 1, maxLength: 6 })
        .map((list) => list.map((each, index) => ({ id: `V${index}`, prior: each.prior, values: Object.fromEntries(each.values) }))),
      readings: fc.array(reading, { maxLength: 6 }),
    });
  });

describe('any comparison', () => {
  it('has probabilities that sum to 1 and never a NaN', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const answer = comparison(question);
        const sum = answer.ranking.reduce((total, { probability }) => total + probability, answer.noneProbability);
        expect(sum).toBeCloseTo(1, 9);
        for (const { probability, groupProbability, features } of answer.ranking) {
          expect(probability).toBeGreaterThanOrEqual(0);
          expect(groupProbability).toBeGreaterThanOrEqual(probability);
          expect(features).toHaveLength(question.features.length);
          for (const { logLikelihood, weightBits } of features) {
            expect(logLikelihood).not.toBeNaN();
            expect(weightBits).not.toBeNaN();
          }
        }
        const next = answer.nextReading;
        if (next !== undefined) expect(Number.isFinite(next.expectedInformationBits) && next.expectedInformationBits >= 0).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('ranks downwards and names every candidate once', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { ranking } = comparison(question);
        expect(ranking.map(({ id }) => id).sort()).toEqual(question.candidates.map(({ id }) => id).sort());
        for (const [index, { probability }] of ranking.entries()) {
          expect(probability).toBeLessThanOrEqual(ranking[index - 1]?.probability ?? 1);
        }
      }),
    );
  });

  it('never lets a prior override a sealing mismatch', () => {
    fc.assert(
      fc.property(anyQuestion, fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (question, prior) => {
        const before = comparison(question);
        const candidates = question.candidates.map((candidate) => {
          const isExcluded = before.ranking.some(({ id, verdict }) => id === candidate.id && verdict === 'excluded');
          return isExcluded ? { ...candidate, prior } : candidate;
        });
        for (const { id, verdict, probability, features } of comparison({ ...question, candidates }).ranking) {
          const isMismatched = question.features.some(
            ({ key, criticality: weight }) =>
              weight === 'sealing' && features.some((each) => each.key === key && each.verdict === 'does-not-conform'),
          );
          expect(verdict === 'excluded').toBe(isMismatched);
          if (isMismatched) expect(probability).toBe(0);
          expect(before.ranking.find((each) => each.id === id)?.verdict === 'excluded').toBe(isMismatched);
        }
      }),
    );
  });

  it('is settled only when the leading group has the threshold and no sealing feature is open', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const answer = comparison(question);
        if (!answer.settled) return;
        const leader = answer.ranking.reduce((best, each) => (each.groupProbability > best.groupProbability ? each : best));
        expect(leader.groupProbability).toBeGreaterThanOrEqual(0.95 - 1e-9);
        expect(leader.verdict).toBe('fits');
        expect(answer.openFeatures).toEqual([]);
      }),
    );
  });

  it('does not depend on the order of the readings', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const forwards = comparison(question);
        const backwards = comparison({ ...question, readings: [...question.readings].reverse() });
        expect(backwards.noneProbability).toBeCloseTo(forwards.noneProbability, 9);
      }),
    );
  });
});
