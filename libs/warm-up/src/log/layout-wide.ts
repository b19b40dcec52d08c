import { findCells, isBlank, newBounds, splitCells, type CellBounds } from './cells.ts';
import { type Channel, type Layout } from './channel.ts';
import { decimalMark } from './decimal-mark.ts';
import { lineText, type Lines } from './lines.ts';
import { type LogText } from './log-text.ts';
import { QUANTITIES } from './quantity.ts';
import { readNumber } from './read-number.ts';
import { unitOfColumn } from './unit-of-column.ts';
import { unitRowAfter } from './unit-row.ts';

const SAMPLED_ROWS = 400;
const TORN = 'Decimal commas in a file separated by commas look like that: export it with semicolons, or with decimal points.';

interface WideChannel extends Channel {
  suffix: string;
  column: number;
}

/** One row per moment, one column per quantity; cells may be blank until a channel has answered. */
export function layoutWide(log: LogText): Layout {
  const { lines, header, chosen, answers } = log;
  const unitRow = unitRowAfter(lines, header, chosen);
  const firstLine = header.line + (unitRow ? 2 : 1);
  const samples = sampledRows(lines, { firstLine, separator: header.separator });
  const filled = (column: number): string[] => samples.flatMap((cells) => (/\d/.test(cells[column] ?? '') ? [cells[column] ?? ''] : []));
  const columns = QUANTITIES.flatMap((quantity) => {
    const column = chosen.byQuantity[quantity];
    return column === undefined ? [] : [{ quantity, column }];
  });
  const mark = decimalMark([...columns.map(({ column }) => column), ...chosen.times.slice(0, 2)].flatMap(filled));
  const channels = columns.map(({ quantity, column }): WideChannel => {
    const name = header.cells[column] ?? '';
    const found = unitOfColumn({
      quantity,
      header: name,
      byPid: chosen.recognised[column]?.byPid === true,
      unitRowCell: unitRow?.[column] ?? '',
      cells: filled(column),
      answered: answers.units?.[quantity],
    });
    return {
      quantity,
      header: name,
      unit: found.unit,
      unitFrom: found.from,
      clock: 0,
      values: new Float64Array(lines.count).fill(Number.NaN),
      filled: 0,
      suffix: found.suffix,
      column,
    };
  });
  const usual = usualCount(samples) ?? header.cells.length;
  const { kept, firstTimes } = readRows(log, { firstLine, usual, mark, channels });
  const bounds = newBounds();
  return {
    channels: channels.map((channel) => ({ ...channel, values: channel.values.subarray(0, kept.length) })),
    clocks: chosen.times.map((column, place) => ({
      header: header.cells[column] ?? '',
      headerUnit: chosen.recognised[column]?.timeUnit ?? null,
      numbers: place === 0 ? firstTimes.subarray(0, kept.length) : null,
      cells: () => kept.map((line) => splitCells(lines, line - 1, { separator: header.separator, bounds })[column] ?? ''),
    })),
    sharedRows: true,
    lineOf: kept,
    decimalMark: mark,
    otherNames: [],
    problem: usual > header.cells.length + 1 ? `Most rows have ${usual} cells under ${header.cells.length} column names. ${TORN}` : null,
  };
}

/** The first rows and some from the middle, where channels that answer late have done so. */
function sampledRows(lines: Lines, { firstLine, separator }: { firstLine: number; separator: string }): string[][] {
  const middle = Math.max(firstLine + SAMPLED_ROWS, Math.floor((firstLine + lines.count) / 2));
  const bounds = newBounds();
  const rows: string[][] = [];
  for (const from of [firstLine, middle]) {
    for (let line = from; line < Math.min(from + SAMPLED_ROWS, lines.count); line += 1) {
      if (!isBlank(lines, line)) rows.push(splitCells(lines, line, { separator, bounds }));
    }
  }
  return rows;
}

function usualCount(rows: readonly (readonly string[])[]): number | null {
  const counts = new Map<number, number>();
  for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].sort(([, left], [, right]) => right - left)[0]?.[0] ?? null;
}

interface Reading {
  firstLine: number;
  usual: number;
  mark: '.' | ',';
  channels: WideChannel[];
}

/** Goes once over all lines: leaves out repeated headers and torn rows, reads the wanted cells. */
function readRows(
  { lines, header, chosen, dropped }: LogText,
  { firstLine, usual, mark, channels }: Reading,
): { kept: number[]; firstTimes: Float64Array } {
  const cells = { separator: header.separator.charCodeAt(0), bounds: newBounds() };
  const { bounds } = cells;
  const headerText = lineText(lines, header.line);
  const timeColumn = chosen.times[0] ?? -1;
  const read = channels.map((channel) => channelReader(channel, mark));
  const kept: number[] = [];
  const firstTimes = new Float64Array(lines.count);
  const cell = { start: 0, end: 0 };
  const form = { decimalMark: mark, suffix: '' };
  for (let line = firstLine; line < lines.count; line += 1) {
    const start = lines.starts[line] ?? 0;
    const length = (lines.ends[line] ?? 0) - start;
    if (length === 0) continue;
    findCells(lines, line, cells);
    if (bounds.count !== usual && bounds.count !== header.cells.length) {
      if (!isBlank(lines, line)) dropped.add(`not ${usual} cells like the other rows`, line + 1);
      continue;
    }
    if (length === headerText.length && lines.text.startsWith(headerText, start)) {
      dropped.add('the header again', line + 1);
      continue;
    }
    for (const reader of read) if (!reader(lines.text, bounds, kept.length)) dropped.add('coolant is no number', line + 1);
    cell.start = bounds.starts[timeColumn] ?? 0;
    cell.end = bounds.ends[timeColumn] ?? 0;
    firstTimes[kept.length] = timeColumn < 0 || timeColumn >= bounds.count ? Number.NaN : readNumber(lines.text, cell, form);
    kept.push(line + 1);
  }
  return { kept, firstTimes };
}

type ChannelReader = (text: string, bounds: CellBounds, row: number) => boolean;

/** Reads one channel's cell of a row; false when a filled coolant cell holds no number. */
function channelReader(channel: WideChannel, mark: '.' | ','): ChannelReader {
  const { column, values } = channel;
  const form = { decimalMark: mark, suffix: channel.suffix };
  const cell = { start: 0, end: 0 };
  return (text, bounds, row) => {
    if (column >= bounds.count) return true;
    cell.start = bounds.starts[column] ?? 0;
    cell.end = bounds.ends[column] ?? 0;
    if (cell.start >= cell.end) return true;
    const value = readNumber(text, cell, form);
    if (Number.isNaN(value)) return channel.quantity !== 'coolant';
    values[row] = value;
    channel.filled += 1;
    return true;
  };
}
