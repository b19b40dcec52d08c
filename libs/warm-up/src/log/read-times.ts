import { readClockColumn } from './read-clock-column.ts';
import { readNumberTimes } from './read-number-times.ts';
import { type UnitSource } from './types.ts';
import { type TimeUnit } from './units.ts';

/** Times of all rows in seconds, NaN where a row has none. */
export interface Times {
  timesS: Float64Array;
  unit: string;
  unitFrom: UnitSource;
  note: string | null;
}

export type TimesOr = { times: Times } | { problem: string; askUnit: boolean };

export interface TimeColumn {
  cells: readonly string[];
  headerUnit: TimeUnit | null;
  answered: TimeUnit | null;
  decimalMark: '.' | ',';
}

/** Reads one time column, whatever form it has. */
export function readTimes({ cells, headerUnit, answered, decimalMark }: TimeColumn): TimesOr {
  const filled = cells.filter((cell) => cell !== '').slice(0, 500);
  if (filled.length === 0) return { problem: 'is empty', askUnit: false };
  if (filled.filter((cell) => cell.includes(':')).length > filled.length / 2) {
    const clock = readClockColumn(cells);
    if ('problem' in clock) return { problem: clock.problem, askUnit: false };
    return { times: { timesS: clock.timesS, unit: 'clock', unitFrom: 'beside each value', note: clock.note } };
  }
  const numbers = readNumberTimes(cells, { unit: answered ?? headerUnit, decimalMark });
  if ('problem' in numbers) return { problem: numbers.problem, askUnit: numbers.ask === true };
  const unitFrom = answered ? 'your answer' : headerUnit ? 'header' : 'the steps of time';
  return { times: { timesS: numbers.timesS, unit: numbers.unit ?? 's', unitFrom, note: numbers.note } };
}
