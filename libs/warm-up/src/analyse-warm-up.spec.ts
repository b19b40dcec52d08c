import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from '@jest/globals';
import { samplesOf, tableOf } from '../testing/traces.ts';
import { analyseWarmUp } from './analyse-warm-up.ts';
import { type Sample } from './types/sample.ts';
import { type Verdict } from './types/analysis.ts';
import { WarmUpInputError } from './warm-up-input-error.ts';

const DATA = path.resolve(import.meta.dirname, '../../../tests/data/warm-up');
const read = (name: string): string => readFileSync(path.join(DATA, name), 'utf8');
const trace = (name: string): Sample[] => samplesOf(read(`${name}.csv`));
const FAULTS: readonly Verdict[] = ['opens-early', 'stuck-open', 'stuck-closed', 'leaks'];

// M. Weber, Automotive OBD-II Dataset, KIT, DOI 10.35097/1130, CC BY 4.0; reduced to 1 Hz, columns renamed. Nobody labelled this car: the
// expectation is a judgement, given with its reason.
const REAL: readonly { name: string; verdict: Verdict; because: string }[] = [
  { name: 'KIT_20170712_S_RT_Normal', verdict: 'normal', because: 'peaks at 94, then 90 to 91 from 30 to 120 km/h' },
  { name: 'KIT_20170728_KA_KA_Normal', verdict: 'normal', because: 'town on a summer day, peaks at 95, back to 90 to 91' },
  { name: 'KIT_20180214_RT_S_Normal', verdict: 'normal', because: 'frost and motorway, peaks at 94, then 87 to 90' },
  { name: 'KIT_20180228_RT_S_Normal', verdict: 'normal', because: 'deep frost, peaks at 95, sags to 82 in slow traffic and comes back' },
  { name: 'KIT_20180326_RT_S_Normal', verdict: 'normal', because: 'peaks at 95, then 88 to 90 for half an hour' },
  {
    name: 'KIT_20180320_KA_KA_Normal',
    verdict: 'not-enough',
    because: 'frost, 24 km/h on average, 70 °C after 27 minutes; the same car was at 90 six days later',
  },
];

describe('real logs, judged healthy or not conclusive', () => {
  it.each(REAL)('$name: $verdict, because $because', ({ name, verdict }) => {
    expect(analyseWarmUp({ samples: trace(name) }).verdict).toBe(verdict);
  });

  it.each(REAL.filter(({ verdict }) => verdict === 'normal'))('$name: first peak and plateau are two things', ({ name }) => {
    const { firstPeakC, plateauC, openingC } = analyseWarmUp({ samples: trace(name), thermostatKind: 'wax' });
    expect(firstPeakC).toBeGreaterThanOrEqual(93);
    expect(firstPeakC).toBeLessThanOrEqual(95);
    expect(plateauC).toBeGreaterThanOrEqual(86);
    expect(plateauC).toBeLessThanOrEqual(91);
    // A valve that holds 90 can't have opened at the peak of 94.
    expect(openingC?.estimate).toBeLessThanOrEqual((plateauC ?? 0) + 4);
  });

  it.each(REAL)('$name: cut off anywhere, it is never called faulty', ({ name }) => {
    const samples = trace(name);
    for (let endS = 240; endS <= 2400; endS += 120) {
      const part = samples.filter(({ timeS }) => timeS < endS);
      for (const nominal of [{}, { nominalOpeningC: 88 }])
        expect(FAULTS).not.toContain(analyseWarmUp({ samples: part, ...nominal }).verdict);
    }
  });

  it('keeps quiet about an engine that was slow in town, and says what to log', () => {
    const { reasons, advice } = analyseWarmUp({ samples: trace('KIT_20180320_KA_KA_Normal'), nominalOpeningC: 88 });
    expect(reasons.join(' ')).toMatch(/24 km\/h on average/);
    expect(advice.join(' ')).toMatch(/20 minutes, most of it above 50 km\/h/);
  });
});

describe('made-up logs with known truth', () => {
  const truths = tableOf(read('TRUTH.csv'));

  it.each(truths)('$name: $acceptable_verdicts', (truth) => {
    const { verdict, openingC } = analyseWarmUp({ samples: trace(truth['name'] ?? ''), nominalOpeningC: Number(truth['nominal_c']) });
    expect((truth['acceptable_verdicts'] ?? '').split('|')).toContain(verdict);
    if (truth['opening_testable'] !== 'yes') return;
    const opensC = Number(truth['true_open_c']);
    expect(Math.abs((openingC?.estimate ?? 0) - opensC)).toBeLessThanOrEqual(2);
    expect(openingC?.low).toBeLessThanOrEqual(opensC);
    expect(openingC?.high).toBeGreaterThanOrEqual(opensC);
  });

  it('reports what the stuck-open one does on the road', () => {
    const { plateauC, fallWithSpeed, timeTo80S, yardstick, openingC } = analyseWarmUp({
      samples: trace('S06_stuck_open'),
      nominalOpeningC: 87,
    });
    expect(plateauC).toBeCloseTo(64.7, 0);
    expect((fallWithSpeed?.fastCPerMin ?? 9) - (fallWithSpeed?.slowCPerMin ?? 0)).toBeLessThan(0);
    expect(timeTo80S).toBeNull();
    expect(openingC).toBeNull();
    expect(yardstick).toMatchObject({ thresholdC: 76, within11C: false, reachedAfterS: null });
  });

  it('tells the driver of a stuck-closed one to stop', () => {
    const { cautions } = analyseWarmUp({ samples: trace('S09_stuck_closed'), nominalOpeningC: 87 });
    expect(cautions[0]).toMatch(/Stop the engine/);
    expect(cautions[0]).toMatch(/Never open the cap while hot/);
  });
});

describe('logs that differ only in form', () => {
  const samples = trace('S02_normal87');
  const reference = analyseWarmUp({ samples, nominalOpeningC: 87 });

  it.each([
    ['every 5 s', samples.filter((_, index) => index % 5 === 0)],
    ['every 10 s', samples.filter((_, index) => index % 10 === 0)],
    [
      'ten times a second',
      samples.flatMap((sample) => Array.from({ length: 10 }, (_, tenth) => ({ ...sample, timeS: sample.timeS + tenth / 10 }))),
    ],
    ['in steps of 0.75 °C', samples.map((sample) => ({ ...sample, coolantC: Math.round(sample.coolantC / 0.75) * 0.75 }))],
    ['with every reading twice', samples.flatMap((sample) => [sample, sample])],
    ['on a clock from seven in the morning', samples.map((sample) => ({ ...sample, timeS: sample.timeS + 25_439.524 }))],
    ['with codes for no answer', samples.map((sample, index) => (index % 97 === 5 ? { ...sample, coolantC: 127 } : sample))],
    ['with a gap of a minute', samples.filter(({ timeS }) => timeS < 300 || timeS > 360)],
    [
      'without engine speed and load',
      samples.map(({ timeS, coolantC, speedKmh = 0, intakeC = 0 }) => ({ timeS, coolantC, speedKmh, intakeC })),
    ],
    ['with a sensor 1.5 °C high', samples.map((sample) => ({ ...sample, coolantC: sample.coolantC + 1.5 }))],
  ])('%s: same verdict, opening within 2 °C', (_, changed) => {
    const { verdict, openingC } = analyseWarmUp({ samples: changed, nominalOpeningC: 87 });
    expect(verdict).toBe(reference.verdict);
    expect(Math.abs((openingC?.estimate ?? 0) - (reference.openingC?.estimate ?? 0))).toBeLessThanOrEqual(2);
  });

  it('gives times on the log’s own clock and durations from its start', () => {
    const later = analyseWarmUp({ samples: samples.map((sample) => ({ ...sample, timeS: sample.timeS + 1000 })), nominalOpeningC: 87 });
    expect(later.knee?.timeS).toBeCloseTo((reference.knee?.timeS ?? 0) + 1000, 3);
    expect(later.timeTo80S).toBe(reference.timeTo80S);
  });
});

describe('two straight lines without noise', () => {
  it('finds the break of T = 20 + 0.1 t up to 670 s, then 87 °C', () => {
    const samples = Array.from({ length: 1400 }, (_, timeS) => ({ timeS, coolantC: timeS <= 670 ? 20 + 0.1 * timeS : 87 }));
    const { knee, plateauC, warmUpRateCPerMin } = analyseWarmUp({ samples, nominalOpeningC: 87 });
    expect(knee?.timeS).toBeCloseTo(670, 0);
    expect(knee?.tempC).toBeCloseTo(87, 1);
    expect(plateauC).toBeCloseTo(87, 6);
    expect(warmUpRateCPerMin).toBeCloseTo(6, 2);
  });
});

describe('two straight lines that end low', () => {
  it('are an early opening, not a frozen sensor, when the car was driven', () => {
    const samples = Array.from({ length: 1500 }, (_, timeS) => ({
      timeS,
      coolantC: Math.min(72, 20 + 0.1 * timeS),
      speedKmh: timeS % 180 < 40 ? 0 : 60,
      ambientC: 18,
      intakeC: 20,
    }));
    const { verdict, openingC } = analyseWarmUp({ samples, nominalOpeningC: 87 });
    expect(verdict).toBe('opens-early');
    expect(Math.abs((openingC?.estimate ?? 0) - 72)).toBeLessThanOrEqual(2);
  });
});

describe('kinds of valve', () => {
  const samples = trace('S02_normal87');

  it('gives an opening temperature for plain wax only', () => {
    expect(analyseWarmUp({ samples, nominalOpeningC: 87 }).openingC).not.toBeNull();
    expect(analyseWarmUp({ samples, thermostatKind: 'wax' }).openingC).not.toBeNull();
    for (const thermostatKind of ['heated-wax', 'twin', 'motor-valve', 'hybrid', 'unknown'] as const) {
      const { openingC, behaviour } = analyseWarmUp({ samples, nominalOpeningC: 87, thermostatKind });
      expect(openingC).toBeNull();
      expect(behaviour).toMatch(/stops climbing at 8\d °C/);
    }
    expect(analyseWarmUp({ samples }).openingC).toBeNull();
  });

  it('does not blame a commanded valve for a level that may be meant', () => {
    const low = trace('S04_opens_early72');
    expect(analyseWarmUp({ samples: low, nominalOpeningC: 87 }).verdict).toBe('opens-early');
    expect(analyseWarmUp({ samples: low, nominalOpeningC: 87, thermostatKind: 'motor-valve' }).verdict).toBe('not-enough');
  });
});

describe('what can’t be answered', () => {
  it.each([
    ['no samples', { samples: [] }, 'samples'],
    ['no numbers', { samples: [{ timeS: Number.NaN, coolantC: 20 }] }, 'samples'],
    ['too many', { samples: new Array<Sample>(11).fill({ timeS: 0, coolantC: 20 }), mostSamples: 10 }, 'samples'],
    ['a nominal temperature in °F', { samples: [{ timeS: 0, coolantC: 20 }], nominalOpeningC: 190 }, 'nominalOpeningC'],
  ])('%s: says which field is wrong', (_, input, field) => {
    try {
      analyseWarmUp(input);
      throw new Error('was answered');
    } catch (error) {
      expect(error).toBeInstanceOf(WarmUpInputError);
      expect((error as WarmUpInputError).field).toBe(field);
    }
  });

  it('calls a handful of readings not enough', () => {
    expect(
      analyseWarmUp({
        samples: [
          { timeS: 0, coolantC: 20 },
          { timeS: 1, coolantC: 20 },
        ],
      }),
    ).toMatchObject({ verdict: 'not-enough', knee: null });
  });
});
