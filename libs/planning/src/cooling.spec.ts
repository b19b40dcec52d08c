import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type CoolingRun, learnCooling, tempAfter, timeUntil } from './index.ts';
import { t95 } from './student-t.ts';

const HOUR = 3_600_000;
const MINUTE = 60_000;
const ENGINE = { startC: 90, airC: 20, timeConstantMs: 2 * HOUR };

describe("Newton's law of cooling", () => {
  it('after one time constant 1/e of the difference is left (computed)', () => {
    expect(tempAfter(ENGINE, 2 * HOUR)).toBeCloseTo(20 + 70 / Math.E, 10);
    expect(tempAfter(ENGINE, 0)).toBe(90);
  });

  // Boyce and DiPrima, Elementary Differential Equations, 2.5: body at 85 °F, 74 °F two hours later, air 68 °F, so k = 0.5207 per
  // hour, and 98.6 °F was 1.129 h before. From memory; the law is the same in any degrees.
  it('the body in the textbook was alive 1.129 h before it was found', () => {
    const k = 0.5207;
    const body = { startC: 98.6, airC: 68, timeConstantMs: HOUR / k };
    expect((timeUntil(body, 85) ?? 0) / HOUR).toBeCloseTo(1.129, 3);
    expect(tempAfter({ ...body, startC: 85 }, 2 * HOUR)).toBeCloseTo(74, 2);
  });

  // Worked answer on a public question page (read): pie at 375 °F in a kitchen of 72 °F, 215 °F after 15 min, is at 120 °F after 36.8 min.
  // Halved here, because 375 is beyond what an engine can be: the law is linear in the temperatures.
  it('the pie is at 120 after 36.8 minutes', () => {
    const timeConstantMs = (15 * MINUTE) / Math.log((375 - 72) / (215 - 72));
    const pie = { startC: 375 / 2, airC: 72 / 2, timeConstantMs };
    expect((timeUntil(pie, 60) ?? 0) / MINUTE).toBeCloseTo(36.8, 1);
  });

  it('is there already, or never gets there', () => {
    expect(timeUntil(ENGINE, 95)).toBe(0);
    expect(timeUntil(ENGINE, 20)).toBeNull();
    expect(timeUntil({ ...ENGINE, airC: 60 }, 50)).toBeNull();
  });

  it('refuses what can not mean anything, in words', () => {
    expect(() => timeUntil({ ...ENGINE, timeConstantMs: 0 }, 50)).toThrow(RangeError);
    expect(() => tempAfter(ENGINE, -1)).toThrow(RangeError);
    expect(() => tempAfter({ ...ENGINE, airC: Number.NaN }, 1)).toThrow(RangeError);
  });

  it('the time until a temperature leads to that temperature', () => {
    const warm = fc.record({ startC: fc.double({ min: 60, max: 120, noNaN: true }), airC: fc.double({ min: -20, max: 40, noNaN: true }) });
    fc.assert(
      fc.property(warm, fc.double({ min: 0.5, max: 8, noNaN: true }), ({ startC, airC }, hours) => {
        const engine = { startC, airC, timeConstantMs: hours * HOUR };
        expect(tempAfter(engine, timeUntil(engine, 50) ?? Number.NaN)).toBeCloseTo(50, 6);
      }),
    );
  });
});

describe('the time constant learnt from readings', () => {
  const run = (
    airC: number,
    startC: number,
    { minutes, noise = () => 0 }: { minutes: readonly number[]; noise?: (i: number) => number },
  ): CoolingRun => ({
    airC,
    readings: minutes.map((minute, i) => ({
      atMs: minute * MINUTE,
      tempC: tempAfter({ startC, airC, timeConstantMs: 2.5 * HOUR }, minute * MINUTE) + noise(i),
    })),
  });

  it('from two clean runs in different air is exact, with no spread', () => {
    const learnt = learnCooling([run(18, 92, { minutes: [0, 30, 75, 140] }), run(5, 80, { minutes: [10, 55, 100] })]);
    expect(learnt).toMatchObject({ source: 'learnt', readings: 7 });
    expect(learnt.timeConstantMs / HOUR).toBeCloseTo(2.5, 9);
    expect((learnt.highMs - learnt.lowMs) / HOUR).toBeLessThan(1e-6);
  });

  it('a line through 80, 42 and 20 K above the air at 0, 1 and 2 h', () => {
    // Computed with another program (weighted normal equations): slope −0.669923 per hour, standard error 0.027292, t(1) = 12.706.
    const readings = [100, 62, 40].map((tempC, hour) => ({ atMs: hour * HOUR, tempC }));
    const learnt = learnCooling([{ airC: 20, readings }]);
    expect(learnt.timeConstantMs / HOUR).toBeCloseTo(1.49271, 5);
    expect(learnt.lowMs / HOUR).toBeCloseTo(0.98358, 5);
    expect(learnt.highMs / HOUR).toBeCloseTo(3.09448, 5);
  });

  it('its 95 % range holds the truth about 95 times in 100', () => {
    let held = 0;
    const runs = 400;
    // A fixed pseudo-random sequence: thermometer noise of 0.5 K, nearly normal by the sum of twelve.
    let seed = 12345;
    const next = (): number => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648;
    const noise = (): number => 0.5 * (Array.from({ length: 12 }, next).reduce((a, b) => a + b, 0) - 6);
    for (let i = 0; i < runs; i += 1) {
      const learnt = learnCooling([
        run(15, 90, { minutes: [0, 20, 40, 60, 90], noise }),
        run(10, 85, { minutes: [0, 30, 60, 120], noise }),
      ]);
      if (learnt.lowMs <= 2.5 * HOUR && 2.5 * HOUR <= learnt.highMs) held += 1;
    }
    expect(held / runs).toBeGreaterThan(0.91);
    expect(held / runs).toBeLessThan(0.985);
  });

  it.each([
    ['none', []],
    ['two readings of one run', [run(18, 90, { minutes: [0, 60] })]],
    ['readings that do not cool', [{ airC: 18, readings: [50, 60, 55, 62].map((tempC, i) => ({ atMs: i * MINUTE, tempC })) }]],
    ['readings at the temperature of the air', [run(18, 18.5, { minutes: [0, 10, 20, 30] })]],
    ['readings at one instant', [{ airC: 18, readings: [80, 81, 79].map((tempC) => ({ atMs: 5, tempC })) }]],
    ['no numbers', [{ airC: Number.NaN, readings: [80, 70, 60].map((tempC, i) => ({ atMs: i, tempC })) }]],
  ])('%s: two hours from memory, with a wide range', (_name, runs) => {
    expect(learnCooling(runs)).toEqual({ timeConstantMs: 2 * HOUR, lowMs: HOUR, highMs: 4 * HOUR, source: 'from-memory', readings: 0 });
  });
});

describe("Student's t, two-sided 95 %", () => {
  it.each([1, 2, 5, 10, 20, 30])('with %d degrees of freedom holds 95 % of the density', (n) => {
    const steps = 20_000;
    const density = (x: number): number => (1 + (x * x) / n) ** (-(n + 1) / 2);
    // x = tan(angle) reaches infinity in finite steps; midpoints of equal angles.
    const area = (limit: number): number => {
      const width = limit / steps;
      return Array.from({ length: steps }, (_one, i) => (i + 0.5) * width).reduce(
        (sum, a) => sum + (density(Math.tan(a)) / Math.cos(a) ** 2) * width,
        0,
      );
    };
    expect(area(Math.atan(t95(n))) / area(Math.PI / 2)).toBeCloseTo(0.95, 4);
  });
  it('never falls below the last row, and knows none without freedom', () => {
    expect([t95(31), t95(1000), t95(0)]).toEqual([2.042, 2.042, Infinity]);
  });
});
