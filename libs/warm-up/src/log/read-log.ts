import { medianStepS } from '../grid/median-step.ts';
import { type Sample } from '../types/sample.ts';
import { askCoolantColumn, askUnit } from './asks.ts';
import { type Layout } from './channel.ts';
import { chooseColumns, type Chosen } from './choose-columns.ts';
import { clockTimes, type ReadClock } from './clock-times.ts';
import { DropAccount } from './dropped-rows.ts';
import { findHeader, isLongHeader, type Header } from './find-header.ts';
import { layoutLong } from './layout-long.ts';
import { isPaired, layoutPaired } from './layout-paired.ts';
import { layoutWide } from './layout-wide.ts';
import { findLines } from './lines.ts';
import { LOG_LIMITS } from './log-limits.ts';
import { mergeTracks } from './merge-tracks.ts';
import { recogniseColumn } from './recognise-column.ts';
import { shapeOf } from './shape.ts';
import { toTracks } from './to-tracks.ts';
import { type LogAnswers, type LogReading, type Understood } from './types.ts';

/** What counts as a gap: this long, and this many usual steps. */
const SHORTEST_GAP_S = 20;
const GAP_STEPS = 6;

const NOTHING: Understood = {
  layout: null,
  separator: null,
  decimalMark: null,
  headerLine: null,
  columns: [],
  ignoredColumns: [],
  locationColumnsDropped: [],
  rows: 0,
  samples: 0,
  durationS: 0,
  ratePerS: null,
  gaps: [],
  dropped: [],
  notes: [],
  open: [],
};

/**
 * Reads a warm-up log as loggers write it: any of the usual separators and decimal marks, units in headers, in a row of their own or
 * behind each value, one column or one row per quantity, clocks with or without date. Nothing about units is guessed: what the file does
 * not say is asked. Columns that say where the car went are left out.
 *
 * @param text The whole file; a byte order mark does no harm
 * @param answers What the person said about this shape of file before
 * @returns Samples with everything that was understood; or the questions to answer first
 * @example readLog('time_s,coolant_c\n0,20\n1,20\n…') // { ok: true, samples: [{ timeS: 0, coolantC: 20 }, …], … }
 */
export function readLog(text: string, answers: LogAnswers = {}): LogReading {
  const limits = answers.limits ?? LOG_LIMITS;
  const refuse = refusal(NOTHING, '');
  if (text.length > limits.characters)
    return refuse(
      `The file has ${millions(text.length)} million characters; at most ${millions(limits.characters)} are read. Cut the log to the first hour.`,
    );
  if (text.includes('\u0000')) return refuse('This is not a text file in a character set that can be read: save it as CSV in UTF-8.');
  const lines = findLines(text.startsWith('\uFEFF') ? text.slice(1) : text);
  const header = findHeader(lines);
  if (!header)
    return refuse('This does not look like a table. The first line should say what each column is, such as: time_s, coolant_c, speed_kmh.');
  const headers = header.cells.map((cell) => cell.trim());
  const chosen = chooseColumns(headers, answers);
  const kind = isLongHeader(headers) ? 'long' : isPaired(headers) ? 'paired' : 'wide';
  const dropped = new DropAccount();
  const log = { lines, header, chosen, answers, dropped };
  const layout = kind === 'long' ? layoutLong(log) : kind === 'paired' ? layoutPaired(log) : layoutWide(log);
  const shape = shapeOf(kind, header.separator, headers);
  const seen = understood({ kind, header, chosen, layout });
  return readLayout({ layout, headers, answers, dropped, seen, shape, rows: limits.rows });
}

interface Reading {
  layout: Layout;
  headers: readonly string[];
  answers: LogAnswers;
  dropped: DropAccount;
  seen: Understood;
  shape: string;
  rows: number;
}

function readLayout({ layout, headers, answers, dropped, seen, shape, rows }: Reading): LogReading {
  const refuse = refusal({ ...seen, dropped: dropped.report() }, shape);
  if (layout.problem) return refuse(layout.problem);
  const coolant = layout.channels.find(({ quantity }) => quantity === 'coolant');
  if (!coolant) return refuse('No column could be recognised as coolant temperature.', [askCoolantColumn(headers)]);
  if (coolant.filled === 0) return refuse(`'${coolant.header}' holds no numbers.`, [askCoolantColumn(headers)]);
  if (coolant.filled > rows)
    return refuse(
      `The log has ${coolant.filled} readings of the coolant; at most ${rows} are read at once. Cut it to the first hour or log less often.`,
    );
  const unitAsks = layout.channels.filter(({ unit }) => unit === null).map(askUnit);
  const times = clockTimes(layout, answers, headers);
  if ('asks' in times) return refuse('The time of the rows could not be read.', [...times.asks, ...unitAsks]);
  if (coolant.unit === null) return refuse('The file does not say in which unit the coolant temperature is.', unitAsks);
  const samples = mergeTracks(toTracks(layout, times.clocks, dropped), layout.lineOf, dropped);
  if (samples.length === 0) return refuse('No row has both a readable time and a coolant temperature.');
  const final = {
    ...seen,
    ...extent(samples),
    columns: [...timeColumns(times.clocks), ...seen.columns],
    dropped: dropped.report(),
    notes: times.notes,
    open: unitAsks,
  };
  return { ok: true, samples, understood: final, shape };
}

function refusal(seen: Understood, shape: string) {
  return (problem: string, asks: Understood['open'] = []): LogReading => ({ ok: false, problem, asks, understood: seen, shape });
}

const isPlace = (name: string): boolean => recogniseColumn(name).isLocation;

const millions = (count: number): string => (count / 1e6).toFixed(1);

function understood({
  kind,
  header,
  chosen,
  layout,
}: {
  kind: 'wide' | 'long' | 'paired';
  header: Header;
  chosen: Chosen;
  layout: Layout;
}): Understood {
  return {
    ...NOTHING,
    layout: kind,
    separator: header.separator,
    decimalMark: layout.decimalMark,
    headerLine: header.line + 1,
    columns: layout.channels.map(({ quantity, header: name, unit, unitFrom, filled }) => ({
      quantity,
      header: name,
      unit,
      unitFrom,
      values: filled,
    })),
    ignoredColumns: kind === 'long' ? layout.otherNames.filter((name) => !isPlace(name)) : chosen.ignored,
    locationColumnsDropped: [...chosen.locations, ...layout.otherNames.filter(isPlace)],
    rows: layout.lineOf.length,
  };
}

function timeColumns(clocks: readonly ReadClock[]): Understood['columns'] {
  return clocks.map(({ header, unit, unitFrom, timesS }) => ({
    quantity: 'time',
    header,
    unit,
    unitFrom,
    values: timesS.filter((time) => !Number.isNaN(time)).length,
  }));
}

function extent(samples: readonly Sample[]): Pick<Understood, 'samples' | 'durationS' | 'ratePerS' | 'gaps'> {
  const durationS = samples[samples.length - 1]?.timeS ?? 0;
  const timeAt = (index: number): number => samples[index]?.timeS ?? 0;
  const gapS = Math.max(SHORTEST_GAP_S, GAP_STEPS * medianStepS(timeAt, samples.length));
  const gaps: Understood['gaps'] = [];
  for (let index = 1; index < samples.length; index += 1) {
    if (timeAt(index) - timeAt(index - 1) > gapS) gaps.push({ fromS: timeAt(index - 1), toS: timeAt(index) });
  }
  return { samples: samples.length, durationS, ratePerS: durationS > 0 ? (samples.length - 1) / durationS : null, gaps };
}
