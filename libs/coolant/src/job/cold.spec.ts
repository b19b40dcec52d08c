import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { CAUTIONS } from '../data/cautions.ts';
import { coldForLevel, coldStart } from './cold-enough.ts';
import { coolDownTemperature, coolDownTime } from './cool-down.ts';
import { learnTimeConstant } from './learn-time-constant.ts';
import { safeToOpen, type CoolantReading, type SafeToOpen, type SafeToOpenInput } from './safe-to-open.ts';
import { evenly, STEPS } from '../spec-support/evenly.ts';

function openOf(input: SafeToOpenInput): SafeToOpen {
  const found = safeToOpen(input);
  if (!found.ok) throw new Error(found.problem.message);
  return found;
}

const contact = (tempC: number, expandedUncertaintyK = 2): CoolantReading => ({ tempC, expandedUncertaintyK, instrument: 'contact' });

describe('safe to open', () => {
  it.each([
    [48, 2, 'safe', 'yes'],
    [48.1, 2, 'unsure', 'with-second-person-and-reason'],
    [50, 2, 'unsure', 'with-second-person-and-reason'],
    [52, 2, 'unsure', 'with-second-person-and-reason'],
    [52.1, 2, 'over', 'with-second-person-and-reason'],
    [20, 2, 'safe', 'yes'],
  ])('%d ± %d °C without pressure: %s', (tempC, uncertainty, outcome, mayOpen) => {
    expect(openOf({ reading: contact(tempC, uncertainty), pressure: 'none' })).toMatchObject({ outcome, mayOpen, limitC: 50 });
  });
  it('not measured needs a second person', () => {
    expect(openOf({ pressure: 'none' })).toMatchObject({ outcome: 'not-measured', mayOpen: 'with-second-person-and-reason', band: null });
  });
  it.each([undefined, contact(60), contact(49)])('on a one-person site there is no exception (%j)', (reading) => {
    expect(openOf({ reading, pressure: 'none', isOnePersonSite: true }).mayOpen).toBe('no');
  });
  it('a cold, measured system may be opened by one person', () => {
    expect(openOf({ reading: contact(20), pressure: 'none', isOnePersonSite: true }).mayOpen).toBe('yes');
  });
  it('pressure knows no exception, however cold', () => {
    fc.assert(
      fc.property(
        fc.integer(STEPS).map(evenly(-40, 130)),
        fc.boolean(),
        fc.constantFrom('present', 'not-checked'),
        (tempC, alone, pressure) => {
          expect(openOf({ reading: contact(tempC), pressure, isOnePersonSite: alone }).mayOpen).toBe('no');
        },
      ),
    );
  });
  it('infrared on bare metal does not count', () => {
    const found = openOf({ reading: { ...contact(30), instrument: 'infrared', isBareMetal: true }, pressure: 'none' });
    expect(found).toMatchObject({ outcome: 'not-measured', band: null });
    expect(found.warnings.map(({ code }) => code)).toEqual(['infrared-on-bare-metal']);
    expect(openOf({ reading: { ...contact(30), instrument: 'infrared' }, pressure: 'none' }).outcome).toBe('safe');
  });
  it("the engine's own sensor is doubted, a hard hose too", () => {
    const found = openOf({
      reading: { ...contact(30), instrument: 'engine-sensor' },
      pressure: 'none',
      isLevelLow: true,
      isHoseSoft: false,
    });
    expect(found.warnings.map(({ code }) => code)).toEqual(['engine-sensor', 'hose-not-soft']);
    expect(found).toMatchObject({ outcome: 'pressure-not-checked', mayOpen: 'no' });
    expect(found.warnings[0]?.text).toContain('hang in air');
  });
  it('never opens above the limit on a single reading', () => {
    fc.assert(
      fc.property(fc.integer(STEPS).map(evenly(-40, 130)), fc.integer(STEPS).map(evenly(0.1, 10)), (tempC, uncertainty) => {
        const found = openOf({ reading: contact(tempC, uncertainty), pressure: 'none' });
        expect(found.mayOpen === 'yes').toBe(tempC + uncertainty <= 50);
      }),
    );
  });
  it('needs an instrument with an uncertainty', () => {
    expect(safeToOpen({ reading: contact(40, 0), pressure: 'none' })).toMatchObject({
      ok: false,
      problem: { field: 'reading.expandedUncertaintyK' },
    });
  });
});

describe('cold enough', () => {
  it.each([
    [23, 15, true],
    [23.1, 15, false],
    [7, 15, true],
    [6.9, 15, false],
  ])('level: coolant %d °C, air %d °C: %s', (coolantC, airC, isCold) => {
    expect(coldForLevel(coolantC, airC)).toMatchObject({ ok: true, isCold, limitK: 8 });
  });
  it.each([
    [21, 15, true],
    [21.1, 15, false],
    [9, 15, true],
  ])('start: coolant %d °C, intake %d °C: %s', (coolantC, intakeC, isCold) => {
    expect(coldStart(coolantC, intakeC)).toMatchObject({ ok: true, isCold, limitK: 6 });
  });
  it('refuses what is no temperature', () => {
    expect(coldStart(Number.NaN, 15)).toMatchObject({ ok: false, problem: { code: 'not-a-number', field: 'coolantC' } });
    expect(coldForLevel(15, 900)).toMatchObject({ ok: false, problem: { field: 'airC' } });
  });
});

describe('cooling down', () => {
  // Newton's law: after one time constant 1/e of the excess is left, after ln 2 of it half.
  it('after one time constant', () => {
    const found = coolDownTemperature({ startC: 90, airC: 20, timeConstantMin: 100 }, 100);
    expect(found.ok && found.temperatureC).toBeCloseTo(20 + 70 / Math.E, 12);
  });
  it('half the excess is gone after ln 2 time constants', () => {
    const found = coolDownTime({ startC: 90, airC: 10, timeConstantMin: 100 }, 50);
    expect(found.ok && found.minutes).toBeCloseTo(100 * Math.LN2, 12);
  });
  it('starts with two hours, from memory, and says it is no measurement', () => {
    const found = coolDownTime({ startC: 90, airC: 15 }, 50);
    if (!found.ok) throw new Error(found.problem.message);
    expect(found.minutes).toBeCloseTo(120 * Math.log(75 / 35), 12);
    expect(found.assumptions[0]).toContain('from memory');
    expect(found.warnings.map(({ code }) => code)).toEqual(['estimate-not-measurement']);
  });
  it('is there already, or never', () => {
    expect(coolDownTime({ startC: 45, airC: 15 }, 50)).toMatchObject({ ok: true, minutes: 0 });
    expect(coolDownTime({ startC: 90, airC: 50 }, 50)).toMatchObject({ ok: false, problem: { code: 'never-reached' } });
  });
  it('time and temperature are inverse to each other', () => {
    const anyTemp = fc.integer(STEPS).map(evenly(51, 120));
    fc.assert(
      fc.property(
        anyTemp,
        fc.integer(STEPS).map(evenly(-20, 49)),
        fc.integer(STEPS).map(evenly(30, 300)),
        (startC, airC, timeConstantMin) => {
          const time = coolDownTime({ startC, airC, timeConstantMin }, 50);
          if (!time.ok) throw new Error(time.problem.message);
          const there = coolDownTemperature({ startC, airC, timeConstantMin }, time.minutes);
          expect(there.ok && there.temperatureC).toBeCloseTo(50, 9);
        },
      ),
    );
  });
  it('refuses a time constant that cannot be', () => {
    expect(coolDownTime({ startC: 90, airC: 15, timeConstantMin: 0 }, 50)).toMatchObject({
      ok: false,
      problem: { field: 'timeConstantMin' },
    });
  });
});

describe('learning the time constant', () => {
  it('comes back from readings that follow the law', () => {
    const readings = [30, 60, 150].map((elapsedMin) => ({ startC: 90, airC: 15, elapsedMin, endC: 15 + 75 * Math.exp(-elapsedMin / 95) }));
    const found = learnTimeConstant(readings);
    expect(found).toMatchObject({ ok: true, readings: 3 });
    expect(found.ok && found.timeConstantMin).toBeCloseTo(95, 9);
  });
  it('leaves out what says nothing', () => {
    const found = learnTimeConstant([
      { startC: 90, airC: 15, elapsedMin: 600, endC: 16 },
      { startC: 90, airC: 15, elapsedMin: 0, endC: 90 },
      { startC: 90, airC: 15, elapsedMin: 60, endC: 95 },
      { startC: 90, airC: 15, elapsedMin: 120, endC: 15 + 75 / Math.E },
    ]);
    expect(found).toMatchObject({ ok: true, readings: 1 });
    expect(found.ok && found.timeConstantMin).toBeCloseTo(120, 9);
  });
  it('refuses where nothing is left', () => {
    expect(learnTimeConstant([])).toMatchObject({ ok: false, problem: { code: 'contradiction' } });
    expect(learnTimeConstant([{ startC: 90, airC: 15, elapsedMin: Number.NaN, endC: 50 }])).toMatchObject({
      ok: false,
      problem: { field: 'readings[0].elapsedMin' },
    });
  });
});

describe('cautions', () => {
  it('stand at every act, each once and with its source', () => {
    expect(new Set(CAUTIONS.map(({ code }) => code)).size).toBe(CAUTIONS.length);
    expect(new Set(CAUTIONS.map(({ moment }) => moment))).toEqual(new Set(['opening', 'handling', 'spill', 'waste', 'running', 'lifting']));
    for (const { text, source } of CAUTIONS) expect(Math.min(text.length, source.length)).toBeGreaterThan(10);
  });
});
