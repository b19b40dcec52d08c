import { checkNumber } from '../checks/check-number.ts';
import { refuse, type Outcome } from '../outcome.ts';

/** One standing engine read twice. */
export interface CoolDownReading {
  readonly startC: number;
  readonly endC: number;
  readonly airC: number;
  readonly elapsedMin: number;
}

/** Nearer to the air than this a reading says little about the time constant. */
const LEAST_ABOVE_AIR_K = 5;

/** A shorter wait shows nothing but the instrument. */
const LEAST_WAIT_MIN = 1;

/** The exponent t/τ that one pair of readings shows, or null where it shows none. */
function exponentOf(reading: CoolDownReading): number | null {
  const { startC, endC, airC, elapsedMin } = reading;
  if (elapsedMin < LEAST_WAIT_MIN || endC - airC < LEAST_ABOVE_AIR_K || startC <= endC) return null;
  return Math.log((startC - airC) / (endC - airC));
}

/**
 * The time constant of standing engines in this workshop, from its own readings.
 *
 * Least squares through the origin of ln((start − air) ÷ (end − air)) against time: long waits weigh more, being the
 * surer ones. Pairs under a minute apart, ending within 5 K of the air, or not cooling, are left out.
 *
 * @param readings Pairs of readings; temperatures in °C, time in min
 * @returns The time constant in min, and how many pairs it rests on; refused where none is of use
 * @example learnTimeConstant([{ startC: 90, endC: 50, airC: 15, elapsedMin: 91.5 }]) // timeConstantMin 120, readings 1
 */
export function learnTimeConstant(
  readings: readonly CoolDownReading[],
): Outcome<{ readonly timeConstantMin: number; readonly readings: number }> {
  for (const [index, reading] of readings.entries()) {
    for (const key of ['startC', 'endC', 'airC', 'elapsedMin'] as const) {
      const problem = checkNumber(reading[key], {
        field: `readings[${index}].${key}`,
        name: 'Each figure of a reading',
        unit: '',
        least: -300,
        most: 1e6,
      });
      if (problem) return refuse(problem);
    }
  }
  const pairs = readings.flatMap((reading) => {
    const exponent = exponentOf(reading);
    return exponent === null ? [] : [{ exponent, elapsedMin: reading.elapsedMin }];
  });
  const timesTime = pairs.reduce((sum, { elapsedMin }) => sum + elapsedMin * elapsedMin, 0);
  const timesExponent = pairs.reduce((sum, { exponent, elapsedMin }) => sum + exponent * elapsedMin, 0);
  if (pairs.length > 0 && timesExponent > 0) return { ok: true, timeConstantMin: timesTime / timesExponent, readings: pairs.length };
  return refuse({
    code: 'contradiction',
    kind: 'impossible',
    field: 'readings',
    message: `No pair of readings shows cooling and ends at least ${LEAST_ABOVE_AIR_K} K above the air. Read again while it is still warm.`,
  });
}
