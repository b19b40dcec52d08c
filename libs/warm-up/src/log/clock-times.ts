import { type Clock, type Layout } from './channel.ts';
import { askTime, askTimeUnit } from './asks.ts';
import { readTimes, type Times } from './read-times.ts';
import { type Ask, type LogAnswers } from './types.ts';

/** A clock that was read, with its header. */
export type ReadClock = Times & { header: string };

export type ClocksOr = { clocks: ReadClock[]; notes: string[] } | { asks: Ask[]; notes: string[] };

/** Reads the clock (or, in paired files, all of them); falls back from a damaged one to the next, then to the rows' own interval. */
export function clockTimes(layout: Layout, answers: LogAnswers, headers: readonly string[]): ClocksOr {
  const read = (clock: Clock) => readTimes({ clock, answered: answers.units?.time ?? null, decimalMark: layout.decimalMark });
  const notes: string[] = [];
  if (answers.rowIntervalS !== undefined && layout.sharedRows)
    return { clocks: [byRow(layout.lineOf.length, answers.rowIntervalS)], notes };
  const clocks: ReadClock[] = [];
  let unclear: Clock | null = null;
  for (const clock of layout.clocks) {
    const result = read(clock);
    if ('times' in result) {
      if (result.times.note) notes.push(`Time '${clock.header}': ${result.times.note}.`);
      clocks.push({ ...result.times, header: clock.header });
      if (layout.sharedRows) return { clocks, notes };
    } else {
      notes.push(`Time '${clock.header}' ${result.problem}.`);
      if (result.askUnit) unclear ??= clock;
      if (!layout.sharedRows) return { asks: result.askUnit ? [askTimeUnit(clock.header)] : askTime(notes, headers), notes };
    }
  }
  if (clocks.length > 0) return { clocks, notes };
  return { asks: unclear ? [askTimeUnit(unclear.header)] : askTime(notes, headers), notes };
}

function byRow(rows: number, intervalS: number): ReadClock {
  return {
    header: 'row number',
    timesS: Float64Array.from({ length: rows }, (_, row) => row * intervalS),
    unit: 's',
    unitFrom: 'your answer',
    note: null,
  };
}
