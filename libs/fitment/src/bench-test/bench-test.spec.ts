import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { FitmentInputError } from '../fitment-input-error.ts';
import { benchTest } from './bench-test.ts';
import { type BenchTestQuestion } from './bench-test.types.ts';
import { atLeast, atMost } from './one-sided.ts';

const good82: BenchTestQuestion = {
  purpose: 'acceptance',
  stampC: 82,
  boilingPointC: 100,
  thermometerUncertaintyC: 0.25,
  liftUncertaintyMm: 0.1,
  heatingCPerMin: 1,
  readings: { startC: 81.5, fullLiftC: 93, liftMm: 9, closedC: 78.5 },
};
const withReadings = (question: BenchTestQuestion, readings: Partial<BenchTestQuestion['readings']>): BenchTestQuestion => ({
  ...question,
  readings: { ...question.readings, ...readings },
});
const verdicts = (question: BenchTestQuestion): string[] => {
  const { start, fullLift, lift, closing } = benchTest(question);
  return [start, fullLift, lift, closing].map(({ verdict }) => verdict);
};

describe('a thermostat stamped 82 °C at sea level', () => {
  // Printed for such parts in service manuals: opens 80 to 84 °C, lifts 8 mm or more at 95 °C, shut below 77 °C (read).
  it('new and good: accepted', () => {
    expect(verdicts(good82)).toEqual(['conforms', 'conforms', 'conforms', 'conforms']);
    expect(benchTest(good82)).toMatchObject({ outcome: 'accepted', warnings: [] });
  });

  it.each<[string, Partial<BenchTestQuestion['readings']>, number]>([
    ['opens at 74 °C', { startC: 74, closedC: 70 }, 0],
    ['opens at 90 °C', { startC: 90, fullLiftC: 94.5 }, 0],
    ['reaches full lift only at 98 °C', { fullLiftC: 98 }, 1],
    ['lifts 5 mm', { liftMm: 5 }, 2],
    ['shuts only at 71 °C', { closedC: 71 }, 3],
  ])('%s: faulty as a suspect, refused when new', (_, readings, index) => {
    const question = withReadings(good82, readings);
    expect(verdicts(question)[index]).toBe('does-not-conform');
    expect(benchTest(question).outcome).toBe('refused');
    const suspect = benchTest({ ...question, purpose: 'suspect' });
    expect(suspect.outcome).toBe('faulty');
    expect(suspect.statement).toContain('no evidence of which opening temperature the car needs');
  });

  it('on the limit: not proven', () => {
    expect(verdicts(withReadings(good82, { startC: 84 }))[0]).toBe('not-proven');
    expect(benchTest(withReadings(good82, { startC: 84 })).outcome).toBe('not-proven');
  });

  it('never opened in water of 97 °C: faulty; not noted: not recorded', () => {
    const shut = withReadings(good82, { startC: null, fullLiftC: null, liftMm: 0, closedC: null, hottestC: 97 });
    expect(verdicts({ ...shut, purpose: 'suspect' })).toEqual(['does-not-conform', 'not-recorded', 'does-not-conform', 'not-recorded']);
    expect(benchTest({ ...shut, purpose: 'suspect' }).start.words).toBe('Had not opened at 97 °C; asked 82 ± 2 °C.');
    expect(verdicts(withReadings(good82, { startC: null }))[0]).toBe('not-recorded');
  });

  it('with no fault shown as a suspect, says that this is no nominal figure', () => {
    const answer = benchTest({ ...good82, purpose: 'suspect' });
    expect(answer.outcome).toBe('no-fault-shown');
    expect(answer.statement).toContain('no evidence of which opening temperature');
  });
});

describe('what plain water cannot show', () => {
  const good88: BenchTestQuestion = { ...good82, stampC: 88, readings: { startC: 88, fullLiftC: null, liftMm: 6, closedC: 84 } };

  it('full lift of an 88 °C part at sea level is not testable, not failed', () => {
    expect(verdicts(good88)).toEqual(['conforms', 'not-testable', 'not-testable', 'conforms']);
    const answer = benchTest(good88);
    expect(answer.outcome).toBe('accepted');
    expect(answer.statement).toContain('not testable in plain water');
    expect(answer.fullLift.words).toBe('Full lift by 101 °C is not testable in plain water, which boils at 100 °C here.');
  });

  it('88 with 12 °C of travel meets the boiling point at sea level', () => {
    expect(verdicts({ ...good88, limits: { travelC: 12 } })[1]).toBe('not-testable');
  });

  it('the 82 °C part is testable at sea level and not where water boils at 94 °C (about 1,800 m)', () => {
    const unseen = withReadings(good82, { fullLiftC: null, liftMm: 6 });
    expect(verdicts(unseen)).toEqual(['conforms', 'not-recorded', 'does-not-conform', 'conforms']);
    expect(verdicts({ ...unseen, boilingPointC: 94 })).toEqual(['conforms', 'not-testable', 'not-testable', 'conforms']);
  });

  it('a lift that was seen below boiling counts', () => {
    expect(verdicts(withReadings(good88, { liftMm: 9, fullLiftC: 98 }))).toEqual(['conforms', 'conforms', 'conforms', 'conforms']);
  });

  it('nothing shown at all is not accepted', () => {
    const nothing: BenchTestQuestion = { ...good82, stampC: 105, readings: { startC: null, fullLiftC: null, liftMm: null, closedC: null } };
    expect(verdicts(nothing)).toEqual(['not-testable', 'not-testable', 'not-testable', 'not-recorded']);
    expect(benchTest(nothing).outcome).toBe('not-proven');
  });
});

describe('fast heating', () => {
  it('widens the uncertainty and warns: 5 °C a minute lags by up to 1.7 °C', () => {
    const fast = benchTest(withReadings({ ...good82, heatingCPerMin: 5 }, { startC: 85.5 }));
    expect(fast.warnings.join()).toContain('lags by up to 1.7 °C');
    expect(fast.start.verdict).toBe('not-proven');
    expect(benchTest(withReadings(good82, { startC: 85.5 })).start.verdict).toBe('does-not-conform');
  });

  it('not noted is pointed out', () => {
    expect(benchTest({ ...good82, heatingCPerMin: undefined }).warnings).toHaveLength(1);
  });
});

describe('refusals', () => {
  it.each<[string, BenchTestQuestion, string]>([
    ['water above boiling', withReadings(good82, { fullLiftC: 104 }), 'Plain water boils at 100 °C here'],
    ['full lift before the start', withReadings(good82, { startC: 82, fullLiftC: 80 }), "can't come before the start"],
    ['shut above full lift', withReadings(good82, { closedC: 95 }), "can't be shut at 95"],
    ['a stamp in °F', { ...good82, stampC: 180 }, 'The stamped temperature in °C is 180'],
    ['no number', withReadings(good82, { liftMm: Number.NaN }), 'The lift in mm is no number'],
  ])('%s', (_, question, words) => {
    expect(() => benchTest(question)).toThrow(FitmentInputError);
    expect(() => benchTest(question)).toThrow(words);
  });
});

describe('one-sided limits', () => {
  it.each([
    [8.2, 'conforms'],
    [8.1, 'not-proven'],
    [7.9, 'not-proven'],
    [7.8, 'does-not-conform'],
  ])('%p mm of at least 8 with u 0.1: %s', (measured, verdict) => {
    expect(atLeast({ measured, limit: 8, standardUncertainty: 0.1 })).toBe(verdict);
  });

  it('mirrors, and the limit itself conforms without uncertainty', () => {
    expect(atLeast({ measured: 8, limit: 8, standardUncertainty: 0 })).toBe('conforms');
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true }), (off, standardUncertainty) => {
        const above = atMost({ measured: 100 + off, limit: 100, standardUncertainty });
        const below = atLeast({ measured: 100 - off, limit: 100, standardUncertainty });
        expect(above).toBe(below);
      }),
    );
  });
});
