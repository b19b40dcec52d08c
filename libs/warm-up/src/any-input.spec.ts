import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { analyseWarmUp } from './analyse-warm-up.ts';
import { readLog } from './log/read-log.ts';
import { type Sample } from './types/sample.ts';

const reading = (min: number, max: number) => fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined, freq: 3 });
const samples = fc
  .array(
    fc.record({
      stepS: fc.double({ min: 0, max: 40, noNaN: true }),
      coolantC: fc.double({ min: -60, max: 230, noNaN: true }),
      speedKmh: reading(-5, 400),
      rpm: reading(0, 9000),
      ambientC: reading(-60, 80),
      intakeC: reading(-60, 150),
    }),
    { minLength: 1, maxLength: 300 },
  )
  .map((rows) => {
    let timeS = 0;
    return rows.map(({ stepS, speedKmh, rpm, ambientC, intakeC, coolantC }): Sample => {
      timeS += stepS;
      return {
        timeS,
        coolantC,
        ...(speedKmh !== undefined && { speedKmh }),
        ...(rpm !== undefined && { rpm }),
        ...(ambientC !== undefined && { ambientC }),
        ...(intakeC !== undefined && { intakeC }),
      };
    });
  });

/** Every number anywhere in an answer. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe('whatever is sent', () => {
  it('is answered with finite numbers, a confidence from 0 to 1 and a reason', () => {
    fc.assert(
      fc.property(samples, fc.option(fc.integer({ min: 75, max: 105 }), { nil: undefined }), (log, nominalOpeningC) => {
        const analysis = analyseWarmUp({ samples: log, ...(nominalOpeningC !== undefined && { nominalOpeningC }) });
        expect(numbersIn(analysis).every(Number.isFinite)).toBe(true);
        expect(analysis.confidence).toBeGreaterThanOrEqual(0);
        expect(analysis.confidence).toBeLessThanOrEqual(1);
        expect(analysis.reasons.length).toBeGreaterThan(0);
        expect(analysis.reasons.join(' ')).not.toMatch(/NaN|Infinity|undefined|null/);
      }),
      { numRuns: 150 },
    );
  });

  it('does not move its own input', () => {
    fc.assert(
      fc.property(samples, (log) => {
        const before = JSON.stringify(log);
        analyseWarmUp({ samples: log });
        expect(JSON.stringify(log)).toBe(before);
      }),
      { numRuns: 30 },
    );
  });

  it('is read or refused with a sentence, as a file', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 6 }),
      fc.double().map(String),
      fc.constantFrom('', '12:59:59', '1:60', '82C', '7B', '"', '1,5', '-40'),
    );
    const header = fc.constantFrom(
      'time_s,coolant_c',
      'Time;Coolant Temp (C);Speed',
      'ms,PID,value',
      '"Time";"05 - Coolant";"Time";"0D - Speed"',
      'a,b,c',
    );
    const file = fc.tuple(
      header,
      fc.array(fc.tuple(cell, cell, cell), { maxLength: 40 }),
      fc.constantFrom(',', ';', '\t'),
      fc.constantFrom('\n', '\r\n', '\r'),
    );
    fc.assert(
      fc.property(file, ([first, rows, separator, end]) => {
        const log = readLog([first, ...rows.map((row) => row.join(separator))].join(end));
        if (!log.ok) expect(log.problem).toMatch(/\w+ \w+/);
        else expect(numbersIn(log.samples).every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 400 },
    );
  });
});
