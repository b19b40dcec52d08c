import { describe, expect, it } from '@jest/globals';
import { type ComparisonFeature, type ComparisonQuestion } from './comparison.types.ts';
import { comparison } from './comparison.ts';

const flange: ComparisonFeature = { key: 'flange', kind: 'number', criticality: 'function', tolerance: 0.3 };
const opening: ComparisonFeature = { key: 'opening', kind: 'number', criticality: 'function', tolerance: 2 };
const seal: ComparisonFeature = { key: 'seal', kind: 'category', criticality: 'sealing' };
const probabilityOf = (question: ComparisonQuestion, id: string): number =>
  comparison(question).ranking.find((each) => each.id === id)?.probability ?? Number.NaN;

describe('two variants by one figure, without none (computed)', () => {
  const twoFlanges: ComparisonQuestion = {
    features: [flange],
    nonePrior: 0,
    candidates: [
      { id: 'small', values: { flange: 53 } },
      { id: 'large', values: { flange: 54 } },
    ],
    readings: [{ key: 'flange', value: 53.4, standardUncertainty: 0.1 }],
  };

  it('53.0 or 54.0 mm, tolerance 0.3, u 0.1, read 53.4: 0.924 to 0.076', () => {
    expect(probabilityOf(twoFlanges, 'small')).toBeCloseTo(0.924, 3);
    expect(probabilityOf(twoFlanges, 'large')).toBeCloseTo(0.076, 3);
  });

  it('with priors 0.2 and 0.8: 0.753 to 0.247', () => {
    const candidates = twoFlanges.candidates.map((candidate, index) => ({ ...candidate, prior: [0.2, 0.8][index] }));
    expect(probabilityOf({ ...twoFlanges, candidates }, 'small')).toBeCloseTo(0.753, 3);
    expect(probabilityOf({ ...twoFlanges, candidates }, 'large')).toBeCloseTo(0.247, 3);
  });

  it.each([
    [82.6, 0.9979],
    [85, 0.5],
  ])('82 or 88 °C, tolerance 2, u 1, read %p: %p', (value, probability) => {
    const question: ComparisonQuestion = {
      features: [opening],
      nonePrior: 0,
      candidates: [
        { id: 'T82', values: { opening: 82 } },
        { id: 'T88', values: { opening: 88 } },
      ],
      readings: [{ key: 'opening', value, standardUncertainty: 1 }],
    };
    expect(probabilityOf(question, 'T82')).toBeCloseTo(probability, 4);
  });
});

describe('textbook case', () => {
  // D. MacKay, Information Theory, Inference, and Learning Algorithms, example 2.3 (question read, answer 0.16 from memory).
  it('a test right 95 times in 100, for something that 1 in 100 has: one positive result makes it 0.16', () => {
    const question: ComparisonQuestion = {
      features: [{ key: 'test', kind: 'category', criticality: 'function', misreadingRate: 0.05, values: ['positive', 'negative'] }],
      nonePrior: 0,
      candidates: [
        { id: 'has it', prior: 0.01, values: { test: 'positive' } },
        { id: 'has it not', prior: 0.99, values: { test: 'negative' } },
      ],
      readings: [{ key: 'test', value: 'positive' }],
    };
    expect(probabilityOf(question, 'has it')).toBeCloseTo(0.161, 3);
  });
});

describe('none of these', () => {
  const one: ComparisonQuestion = {
    features: [flange],
    candidates: [{ id: 'A', values: { flange: 54 } }],
    readings: [{ key: 'flange', value: 54, standardUncertainty: 0.1 }],
  };

  it('is scored uniformly over 54 ± max(10 tolerances, 6 s) = 51 to 57, by hand', () => {
    const inA = 0.95 / (0.2 * Math.sqrt(2 * Math.PI));
    const inNone = 0.05 / 6;
    expect(comparison(one).noneProbability).toBeCloseTo(inNone / (inA + inNone), 12);
  });

  it('takes the range given with the feature instead', () => {
    const ranged = { ...one, features: [{ ...flange, low: 44, high: 67 }] };
    const inA = 0.95 / (0.2 * Math.sqrt(2 * Math.PI));
    const inNone = 0.05 / 23;
    expect(comparison(ranged).noneProbability).toBeCloseTo(inNone / (inA + inNone), 12);
  });

  it('takes 6 s where the instrument is coarse: u 1 makes s √1.03', () => {
    const coarse = { ...one, readings: [{ key: 'flange', value: 54, standardUncertainty: 1 }] };
    const spread = Math.sqrt(1.03);
    const inA = 0.95 / (spread * Math.sqrt(2 * Math.PI));
    const inNone = 0.05 / (12 * spread);
    expect(comparison(coarse).noneProbability).toBeCloseTo(inNone / (inA + inNone), 12);
  });

  it('replaces a spread of nothing by a thousandth of the figure', () => {
    const exact = { ...one, features: [{ ...flange, tolerance: 0 }], readings: [{ key: 'flange', value: 54 }] };
    const inA = 0.95 / (0.054 * Math.sqrt(2 * Math.PI));
    const inNone = 0.05 / (12 * 0.054);
    expect(comparison(exact).noneProbability).toBeCloseTo(inNone / (inA + inNone), 12);
  });

  it('wins when nothing fits', () => {
    const answer = comparison({ ...one, readings: [{ key: 'flange', value: 56, standardUncertainty: 0.1 }] });
    expect(answer.noneProbability).toBeGreaterThan(0.99);
    expect(answer.settled).toBe(false);
  });

  it('shares a category equally among those seen plus one', () => {
    const question: ComparisonQuestion = {
      features: [{ ...seal, misreadingRate: 0.04 }],
      candidates: [
        { id: 'ring', values: { seal: 'o-ring' } },
        { id: 'unstated', values: {} },
      ],
      readings: [{ key: 'seal', value: 'o-ring' }],
    };
    const total = 0.475 * 0.96 + 0.475 / 2 + 0.05 / 2;
    expect(comparison(question).noneProbability).toBeCloseTo(0.025 / total, 12);
    expect(probabilityOf(question, 'unstated')).toBeCloseTo(0.2375 / total, 12);
    expect(comparison(question).ranking[1]?.features[0]).toMatchObject({ verdict: 'not-proven', note: 'not-stated' });
  });
});

describe('sealing', () => {
  const rings: ComparisonQuestion = {
    features: [seal, flange],
    candidates: [
      { id: 'ring', prior: 1, values: { seal: 'o-ring', flange: 54 } },
      { id: 'gasket', prior: 1e8, values: { seal: 'flat-gasket', flange: 54 } },
    ],
    readings: [{ key: 'seal', value: 'o-ring' }],
  };

  it('a mismatch excludes whatever the prior says, and the rest is renormalised', () => {
    const answer = comparison(rings);
    expect(answer.ranking.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['ring', 'open'],
      ['gasket', 'excluded'],
    ]);
    expect(answer.ranking[1]?.probability).toBe(0);
    expect((answer.ranking[0]?.probability ?? 0) + answer.noneProbability).toBeCloseTo(1, 12);
  });

  it('all excluded is an answer: none of these, nothing more to read', () => {
    const answer = comparison({ ...rings, nonePrior: 0, readings: [{ key: 'seal', value: 'moulded-rim' }] });
    expect(answer.noneProbability).toBe(1);
    expect(answer.ranking.every(({ verdict, probability }) => verdict === 'excluded' && probability === 0)).toBe(true);
    expect(answer.settled).toBe(false);
    expect(answer).not.toHaveProperty('nextReading');
  });

  it('a sealing number excludes only when it is proven to differ', () => {
    const question = (value: number): ComparisonQuestion => ({
      features: [{ ...flange, criticality: 'sealing' }],
      candidates: [{ id: 'A', values: { flange: 54 } }],
      readings: [{ key: 'flange', value, standardUncertainty: 0.1 }],
    });
    expect(comparison(question(54.46)).ranking[0]?.verdict).toBe('open');
    expect(comparison(question(54.47)).ranking[0]?.verdict).toBe('excluded');
  });
});

describe('when the choice is settled', () => {
  const sealing: ComparisonFeature = { ...flange, criticality: 'sealing', standardUncertainty: 0.025 };
  const question: ComparisonQuestion = {
    features: [seal, sealing],
    candidates: [
      { id: 'A', values: { seal: 'o-ring', flange: 54 } },
      { id: 'B', values: { seal: 'o-ring', flange: 52 } },
      { id: 'C', values: { seal: 'flat-gasket', flange: 54 } },
    ],
    readings: [{ key: 'seal', value: 'o-ring' }],
  };

  it('not with a sealing feature unread: it asks for the flange', () => {
    const answer = comparison(question);
    expect(answer.settled).toBe(false);
    expect(answer.openFeatures).toEqual(['flange']);
    expect(answer.nextReading?.key).toBe('flange');
  });

  it('with the flange read', () => {
    const answer = comparison({
      ...question,
      readings: [...question.readings, { key: 'flange', value: 54.02, standardUncertainty: 0.025 }],
    });
    expect(answer.settled).toBe(true);
    expect(answer.ranking[0]).toMatchObject({ id: 'A', verdict: 'fits' });
    expect(answer.openFeatures).toEqual([]);
    expect(answer).not.toHaveProperty('nextReading');
  });

  it('not when the flange could not be read and the remaining two differ in it', () => {
    const answer = comparison({ ...question, readings: [...question.readings, { key: 'flange', value: null }] });
    expect(answer.settled).toBe(false);
    expect(answer.openFeatures).toEqual(['flange']);
    expect(answer.ranking[0]?.features[1]).toMatchObject({ verdict: 'not-proven', logLikelihood: 0, note: 'could-not-be-read' });
    expect(answer).not.toHaveProperty('nextReading');
  });

  it('with an unreadable flange in which the remaining ones agree', () => {
    const candidates = question.candidates.filter(({ id }) => id !== 'B');
    const answer = comparison({ ...question, candidates, readings: [...question.readings, { key: 'flange', value: null }] });
    expect(answer.settled).toBe(true);
    expect(answer.ranking[0]?.id).toBe('A');
  });

  it('asks for a better instrument when the reading was too coarse', () => {
    const readings = [...question.readings, { key: 'flange', value: 53.9, standardUncertainty: 0.25 }];
    const answer = comparison({ ...question, readings });
    expect(answer.settled).toBe(false);
    expect(answer.nextReading).toMatchObject({ key: 'flange', again: true });
  });

  it('never on the prior alone', () => {
    const answer = comparison({ features: [flange], candidates: [{ id: 'A', values: { flange: 54 } }], readings: [] });
    expect(answer.ranking[0]?.probability).toBeCloseTo(0.95, 12);
    expect(answer.settled).toBe(false);
  });

  it('not when a function feature is proven wrong', () => {
    const answer = comparison({
      features: [{ ...seal, misreadingRate: 0.01 }, opening],
      nonePrior: 0,
      candidates: [
        { id: 'A', values: { seal: 'o-ring', opening: 82 } },
        { id: 'B', values: { seal: 'o-ring', opening: 76 } },
      ],
      readings: [
        { key: 'seal', value: 'o-ring' },
        { key: 'opening', value: 92, standardUncertainty: 0.5 },
      ],
    });
    expect(answer.ranking[0]?.probability).toBeGreaterThan(0.99);
    expect(answer.ranking[0]?.verdict).toBe('open');
    expect(answer.settled).toBe(false);
  });
});

describe('the same part under two numbers', () => {
  const question: ComparisonQuestion = {
    features: [seal, flange],
    candidates: [
      { id: 'A', values: { seal: 'o-ring', flange: 54 } },
      { id: 'B', values: { seal: 'flat-gasket', flange: 54 } },
      { id: 'C', values: { seal: 'o-ring', flange: 54 } },
    ],
    readings: [
      { key: 'seal', value: 'o-ring' },
      { key: 'flange', value: 54, standardUncertainty: 0.025 },
    ],
  };

  it('is found, counts together and is settled together', () => {
    const answer = comparison(question);
    expect(answer.sameAs).toEqual([['A', 'C']]);
    expect(answer.ranking.slice(0, 2).map(({ id, verdict }) => [id, verdict])).toEqual([
      ['A', 'fits'],
      ['C', 'fits'],
    ]);
    expect(answer.ranking[0]?.probability).toBeLessThan(0.5);
    expect(answer.ranking[0]?.groupProbability).toBeGreaterThan(0.95);
    expect(answer.settled).toBe(true);
  });
});

describe('several readings of one feature', () => {
  const base: ComparisonQuestion = {
    features: [flange],
    nonePrior: 0,
    candidates: [
      { id: 'small', values: { flange: 53 } },
      { id: 'large', values: { flange: 54 } },
    ],
    readings: [],
  };
  const at = (measuredAt: string, value: number) => ({ key: 'flange', value, standardUncertainty: 0.1, measuredAt });

  it('of one part are pooled: u 0.1 twice is u 0.0707', () => {
    const twice = { ...base, readings: [at('removed part', 53.3), at('removed part', 53.5)] };
    const once = { ...base, readings: [{ key: 'flange', value: 53.4, standardUncertainty: 0.1 / Math.SQRT2 }] };
    expect(probabilityOf(twice, 'small')).toBeCloseTo(probabilityOf(once, 'small'), 12);
  });

  it('of the part and of the recess count each', () => {
    const both = { ...base, readings: [at('removed part', 53.4), at('recess', 53.4)] };
    const odds = (0.9241418 / 0.0758582) ** 2;
    expect(probabilityOf(both, 'small')).toBeCloseTo(odds / (1 + odds), 6);
  });

  it('that contradict each other are pointed out', () => {
    const answer = comparison({ ...base, readings: [at('removed part', 53), at('removed part', 54)] });
    expect(answer.warnings.join(' ')).toContain('contradict');
  });
});
