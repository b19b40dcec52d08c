import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { comparison } from './comparison.ts';
import { type ComparisonQuestion } from './comparison.types.ts';
import { discreteInformationBits } from './discrete-information.ts';
import { type Mixture, mixtureInformationBits } from './mixture-information.ts';

const binaryEntropy = (p: number): number => -p * Math.log2(p) - (1 - p) * Math.log2(1 - p);

describe('entropy textbook cases', () => {
  // Cover and Thomas, Elements of Information Theory, example 2.2.1: joint table read, results 7/4 and 3/8 bit from memory.
  it('blood group and skin cancer: 3/8 bit', () => {
    const joint = [
      [1 / 8, 1 / 16, 1 / 16, 1 / 4],
      [1 / 16, 1 / 8, 1 / 16, 0],
      [1 / 32, 1 / 32, 1 / 16, 0],
      [1 / 32, 1 / 32, 1 / 16, 0],
    ];
    const prior = joint.map((row) => row.reduce((sum, each) => sum + each, 0));
    expect(prior).toEqual([1 / 2, 1 / 4, 1 / 8, 1 / 8]);
    const likelihood = joint.map((row, index) => row.map((each) => each / (prior[index] ?? 1)));
    expect(discreteInformationBits(prior, likelihood)).toBeCloseTo(3 / 8, 12);
  });

  // The binary symmetric channel, C = 1 − H(ε): Shannon 1948; Cover and Thomas 7.1.4 (from memory).
  it.each([0, 0.02, 0.1, 0.5])('two equally likely variants, category misread at %p: 1 − H(ε) bits', (misreadingRate) => {
    const question: ComparisonQuestion = {
      features: [{ key: 'bleed', kind: 'category', criticality: 'function', misreadingRate, values: ['hole', 'jiggle-pin'] }],
      nonePrior: 0,
      candidates: [
        { id: 'A', values: { bleed: 'hole' } },
        { id: 'B', values: { bleed: 'jiggle-pin' } },
      ],
      readings: [],
    };
    const expected = misreadingRate === 0 ? 1 : 1 - binaryEntropy(misreadingRate);
    if (expected < 1e-9) expect(comparison(question)).not.toHaveProperty('nextReading');
    else expect(comparison(question).nextReading?.expectedInformationBits).toBeCloseTo(expected, 12);
  });
});

/** The same information by plain summation of p(h)·p(y|h)·log₂(p(y|h)/p(y)) over a fine grid: another route to the figure. */
function summedBits({ normals, uniform }: Mixture): number {
  const from = Math.min(uniform.low, ...normals.map(({ mean, deviation }) => mean - 12 * deviation));
  const to = Math.max(uniform.high, ...normals.map(({ mean, deviation }) => mean + 12 * deviation));
  const count = 200_000;
  const step = (to - from) / count;
  let bits = 0;
  for (let index = 0; index < count; index += 1) {
    const y = from + (index + 0.5) * step;
    const parts = normals.map(({ weight, mean, deviation }) => [
      weight,
      Math.exp(-0.5 * ((y - mean) / deviation) ** 2) / (deviation * Math.sqrt(2 * Math.PI)),
    ]);
    parts.push([uniform.weight, y > uniform.low && y < uniform.high ? 1 / (uniform.high - uniform.low) : 0]);
    const total = parts.reduce((sum, [weight = 0, density = 0]) => sum + weight * density, 0);
    for (const [weight = 0, density = 0] of parts) if (weight * density > 0) bits += weight * density * Math.log2(density / total) * step;
  }
  return bits;
}

describe('information of a figure', () => {
  it.each<[string, Mixture]>([
    [
      'two close normals',
      {
        normals: [
          { weight: 0.5, mean: 53, deviation: 0.3 },
          { weight: 0.5, mean: 54, deviation: 0.3 },
        ],
        uniform: { weight: 0, low: 50, high: 57 },
      },
    ],
    [
      'three and a broad part',
      {
        normals: [
          { weight: 0.5, mean: 52, deviation: 0.2 },
          { weight: 0.3, mean: 52.5, deviation: 0.2 },
          { weight: 0.15, mean: 54, deviation: 0.2 },
        ],
        uniform: { weight: 0.05, low: 49, high: 57 },
      },
    ],
    [
      'a range that cuts a normal',
      {
        normals: [
          { weight: 0.6, mean: 52, deviation: 1 },
          { weight: 0.2, mean: 53, deviation: 0.5 },
        ],
        uniform: { weight: 0.2, low: 52.3, high: 56 },
      },
    ],
    ['nothing but the broad part', { normals: [], uniform: { weight: 1, low: 0, high: 2 } }],
  ])('%s agrees with plain summation', (_, mixture) => {
    expect(mixtureInformationBits(mixture)).toBeCloseTo(summedBits(mixture), 5);
  });

  it('is the entropy of the choice when the figures lie far apart', () => {
    const normals = [0.5, 0.25, 0.125, 0.125].map((weight, index) => ({ weight, mean: 100 * index, deviation: 1 }));
    expect(mixtureInformationBits({ normals, uniform: { weight: 0, low: 0, high: 1 } })).toBeCloseTo(1.75, 9);
  });

  it('lies between nothing and the entropy of the choice', () => {
    const part = fc.record({
      weight: fc.double({ min: 0.01, max: 1, noNaN: true }),
      mean: fc.double({ min: -100, max: 100, noNaN: true }),
      deviation: fc.double({ min: 0.01, max: 10, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), fc.double({ min: 0.01, max: 1, noNaN: true }), (parts, broad) => {
        const total = parts.reduce((sum, { weight }) => sum + weight, broad);
        const normals = parts.map((each) => ({ ...each, weight: each.weight / total }));
        const bits = mixtureInformationBits({ normals, uniform: { weight: broad / total, low: -200, high: 200 } });
        const choice = [...normals.map(({ weight }) => weight), broad / total].reduce((sum, p) => sum - p * Math.log2(p), 0);
        expect(bits).toBeGreaterThanOrEqual(0);
        expect(bits).toBeLessThanOrEqual(choice + 1e-6);
      }),
    );
  });
});

describe('the next reading', () => {
  const question = (flangeMinutes: number): ComparisonQuestion => ({
    features: [
      { key: 'flange', kind: 'number', criticality: 'function', tolerance: 0.3, standardUncertainty: 0.025, minutes: flangeMinutes },
      { key: 'bleed', kind: 'category', criticality: 'function', minutes: 1, misreadingRate: 0.02 },
    ],
    candidates: [
      { id: 'A', values: { flange: 52, bleed: 'hole' } },
      { id: 'B', values: { flange: 54, bleed: 'hole' } },
      { id: 'C', values: { flange: 56, bleed: 'jiggle-pin' } },
      { id: 'D', values: { flange: 58, bleed: 'jiggle-pin' } },
    ],
    readings: [],
  });

  it('is the one with most information per minute', () => {
    const quick = comparison(question(1)).nextReading;
    expect(quick?.key).toBe('flange');
    expect(quick?.expectedInformationBits).toBeGreaterThan(1.9);
    expect(quick?.bitsPerMinute).toBe(quick?.expectedInformationBits);
    const slow = comparison(question(10)).nextReading;
    expect(slow?.key).toBe('bleed');
  });

  it('skips what has been read or could not be read', () => {
    const answer = comparison({ ...question(1), readings: [{ key: 'flange', value: null }] });
    expect(answer.nextReading?.key).toBe('bleed');
  });

  it('is nothing when nothing can part the candidates', () => {
    const candidates = ['A', 'B'].map((id) => ({ id, values: { flange: 54 } }));
    const features = question(1).features.slice(0, 1);
    expect(comparison({ features, candidates, nonePrior: 0, readings: [] })).not.toHaveProperty('nextReading');
  });
});
