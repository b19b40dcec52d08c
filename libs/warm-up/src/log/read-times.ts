import { type Clock } from './channel.ts';
import { readClockColumn } from './read-clock-column.ts';
import { readNumberTimes } from './read-number-times.ts';
import { readNumber } from './read-number.ts';
import { type UnitSource } from './types.ts';
import { type TimeUnit } from './units.ts';

const LOOKED_AT = 500;

/** Times of all rows in seconds, NaN where a row has none. */
export interface Times {
  timesS: Float64Array;
  unit: string;
  unitFrom: UnitSource;
  note: string | null;
}

export type TimesOr = { times: Times } | { problem: string; askUnit: boolean };

export interface TimeColumn {
  clock: Clock;
  answered: TimeUnit | null;
  decimalMark: '.' | ',';
}

/** Reads one time column, whatever form it has. */
export function readTimes({ clock, answered, decimalMark }: TimeColumn): TimesOr {
  const numbers = clock.numbers && isMostlyKnown(clock.numbers) ? clock.numbers : null;
  if (numbers) return fromNumbers(numbers, clock.headerUnit, answered);
  const cells = clock.cells();
  const filled = cells.filter((cell) => cell !== '').slice(0, LOOKED_AT);
  if (filled.length === 0) return { problem: 'is empty', askUnit: false };
  if (filled.filter((cell) => cell.includes(':')).length > filled.length / 2) {
    const times = readClockColumn(cells);
    if ('problem' in times) return { problem: times.problem, askUnit: false };
    return { times: { timesS: times.timesS, unit: 'clock', unitFrom: 'beside each value', note: times.note } };
  }
  const form = { decimalMark, suffix: '' };
  return fromNumbers(
    Float64Array.from(cells, (cell) => readNumber(cell, { start: 0, end: cell.length }, form)),
    clock.headerUnit,
    answered,
  );
}

function fromNumbers(raw: Float64Array, headerUnit: TimeUnit | null, answered: TimeUnit | null): TimesOr {
  const numbers = readNumberTimes(raw, answered ?? headerUnit);
  if ('problem' in numbers) return { problem: numbers.problem, askUnit: numbers.ask === true };
  const unitFrom = answered ? 'your answer' : headerUnit ? 'header' : 'the steps of time';
  return { times: { timesS: numbers.timesS, unit: numbers.unit ?? 's', unitFrom, note: numbers.note } };
}

function isMostlyKnown(values: Float64Array): boolean {
  let known = 0;
  for (const value of values) if (!Number.isNaN(value)) known += 1;
  return known > values.length / 2;
}
