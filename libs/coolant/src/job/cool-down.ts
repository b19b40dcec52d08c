import { formatFigure, formatTemperature } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { refuse, type Grounds, type Outcome, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';

/** Time constant of a shut engine standing in a room, min, until the workshop's own readings teach a better one. From memory. */
export const DEFAULT_TIME_CONSTANT_MIN = 120;

/** The last of the way takes for ever; nearer to the air than this no time is told. */
const LEAST_ABOVE_AIR_K = 0.1;

export interface CoolDownInput {
  readonly startC: number;
  readonly airC: number;
  /** 120 where left out. */
  readonly timeConstantMin?: number | undefined;
}

export interface CoolDownTemperature extends Grounds {
  readonly temperatureC: number;
}

export interface CoolDownTime extends Grounds {
  /** 0 where it is that cold already. */
  readonly minutes: number;
}

function check(input: CoolDownInput): ReturnType<typeof checkNumber> {
  const temperature = { unit: '°C', least: -60, most: 200 };
  return (
    checkNumber(input.startC, { ...temperature, field: 'startC', name: "The coolant's temperature" }) ??
    checkNumber(input.airC, { ...temperature, field: 'airC', name: "The air's temperature" }) ??
    checkNumber(input.timeConstantMin ?? DEFAULT_TIME_CONSTANT_MIN, {
      field: 'timeConstantMin',
      name: 'The time constant',
      unit: 'min',
      least: 1,
      most: 10000,
    })
  );
}

function grounds(input: CoolDownInput): Grounds {
  const constant = formatFigure(input.timeConstantMin ?? DEFAULT_TIME_CONSTANT_MIN, 0);
  const basis = input.timeConstantMin === undefined ? 'from memory, until own readings teach a better one' : 'as given';
  const warning: Warning = {
    code: 'estimate-not-measurement',
    text: 'This is an estimate for planning. It never replaces measuring before the system is opened.',
  };
  return {
    assumptions: [`Bonnet shut, air at ${formatTemperature(input.airC, { unit: '°C' })}, time constant ${constant} min (${basis}).`],
    warnings: [warning],
    sources: [SOURCE.cooling],
  };
}

/**
 * How warm the coolant will be after a time, standing. Newton's law: air + (start − air)·e^(−t/τ).
 *
 * @param input Temperatures in °C, time constant in min
 * @param elapsedMin Minutes from now, 0 or more
 * @example coolDownTemperature({ startC: 90, airC: 15 }, 120) // temperatureC 42.6
 */
export function coolDownTemperature(input: CoolDownInput, elapsedMin: number): Outcome<CoolDownTemperature> {
  const problem = check(input) ?? checkNumber(elapsedMin, { field: 'elapsedMin', name: 'The time', unit: 'min', least: 0, most: 1e6 });
  if (problem) return refuse(problem);
  const { startC, airC, timeConstantMin = DEFAULT_TIME_CONSTANT_MIN } = input;
  return { ok: true, temperatureC: airC + (startC - airC) * Math.exp(-elapsedMin / timeConstantMin), ...grounds(input) };
}

/**
 * How long until the coolant is down to a limit, standing. Newton's law: τ·ln((start − air) ÷ (limit − air)).
 *
 * @param input Temperatures in °C, time constant in min
 * @param limitC The limit, °C; refused where the air is less than 0.1 K colder than it
 * @example coolDownTime({ startC: 90, airC: 15 }, 50) // minutes 91.5
 */
export function coolDownTime(input: CoolDownInput, limitC: number): Outcome<CoolDownTime> {
  const problem = check(input) ?? checkNumber(limitC, { field: 'limitC', name: 'The limit', unit: '°C', least: -60, most: 200 });
  if (problem) return refuse(problem);
  const { startC, airC, timeConstantMin = DEFAULT_TIME_CONSTANT_MIN } = input;
  if (startC <= limitC) return { ok: true, minutes: 0, ...grounds(input) };
  if (airC > limitC - LEAST_ABOVE_AIR_K) {
    return refuse({
      code: 'never-reached',
      kind: 'impossible',
      field: 'limitC',
      limit: airC,
      message:
        `In air of ${formatTemperature(airC, { unit: '°C' })} it never cools to ${formatTemperature(limitC, { unit: '°C' })}. ` +
        `Stand the car somewhere colder.`,
    });
  }
  return { ok: true, minutes: timeConstantMin * Math.log((startC - airC) / (limitC - airC)), ...grounds(input) };
}
