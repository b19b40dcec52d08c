import { decodePid } from '../pids/decode-pid.ts';
import { cellText, findCells, newBounds, type CellBounds } from './cells.ts';
import { type Channel, type Layout } from './channel.ts';
import { LONG_NAME_WORDS, LONG_UNIT_WORDS, LONG_VALUE_WORDS } from './column-words.ts';
import { decimalMark } from './decimal-mark.ts';
import { type Lines } from './lines.ts';
import { type LogText } from './log-text.ts';
import { bestNames, type LongName } from './long-names.ts';
import { pidNumber } from './pid-quantity.ts';
import { readNumber } from './read-number.ts';
import { unitOfColumn } from './unit-of-column.ts';

interface LongColumns {
  names: number[];
  value: number;
  unit: number;
}

interface LongRow {
  line: number;
  raw: string;
  unitText: string;
}

const SAMPLED_ROWS = 400;

/** One reading per row: a channel's name or number, its value and perhaps its unit. */
export function layoutLong(log: LogText): Layout {
  const { lines, header, chosen } = log;
  const columns = longColumns(header.cells);
  const firstLine = header.line + 1;
  const rowsOf = new Map<string, LongRow[]>();
  const nameCells = new Map<string, string[]>();
  eachLine(lines, { firstLine, separator: header.separator }, (bounds, line) => {
    const cells = columns.names.map((column) => cellText(lines, bounds, column));
    const key = cells.join('\u0000');
    const rows = rowsOf.get(key) ?? [];
    if (rows.length === 0) {
      rowsOf.set(key, rows);
      nameCells.set(key, cells);
    }
    rows.push({ line, raw: cellText(lines, bounds, columns.value), unitText: cellText(lines, bounds, columns.unit) });
  });
  const names = bestNames(nameCells, log.answers);
  const mark = decimalMark(names.flatMap(({ key }) => (rowsOf.get(key) ?? []).slice(0, SAMPLED_ROWS).map(({ raw }) => raw)));
  // One answer with a letter among its digits shows that all answers of the file are bytes.
  const inBytes = names.some((name) => name.pidText !== null && (rowsOf.get(name.key) ?? []).slice(0, SAMPLED_ROWS).some(isBytes));
  const used = names.flatMap(({ key }) => (rowsOf.get(key) ?? []).map(({ line }) => line)).sort((left, right) => left - right);
  const place = new Map(used.map((line, row) => [line, row]));
  const channels = names.map((name) => channelOf(name, { rows: rowsOf.get(name.key) ?? [], place, mark, inBytes, log }));
  const bounds = newBounds();
  return {
    channels,
    clocks: chosen.times.map((column) => ({
      header: header.cells[column] ?? '',
      headerUnit: chosen.recognised[column]?.timeUnit ?? null,
      numbers: null,
      cells: () =>
        used.map((line) => {
          findCells(lines, line - 1, { separator: header.separator.charCodeAt(0), bounds });
          return cellText(lines, bounds, column);
        }),
    })),
    sharedRows: true,
    lineOf: used,
    decimalMark: mark,
    otherNames: [...nameCells]
      .filter(([key]) => !names.some((name) => name.key === key))
      .map(([, cells]) => cells.filter((cell) => cell !== '').join(' ')),
    problem: null,
  };
}

function longColumns(cells: readonly string[]): LongColumns {
  const at = (words: RegExp): number[] => cells.flatMap((cell, index) => (words.test(cell.trim().toLowerCase()) ? [index] : []));
  return { names: at(LONG_NAME_WORDS), value: at(LONG_VALUE_WORDS)[0] ?? -1, unit: at(LONG_UNIT_WORDS)[0] ?? -1 };
}

interface Where {
  firstLine: number;
  separator: string;
}

function eachLine(lines: Lines, { firstLine, separator }: Where, visit: (bounds: CellBounds, line: number) => void): void {
  const cells = { separator: separator.charCodeAt(0), bounds: newBounds() };
  for (let line = firstLine; line < lines.count; line += 1) {
    if (lines.starts[line] === lines.ends[line]) continue;
    findCells(lines, line, cells);
    visit(cells.bounds, line + 1);
  }
}

function isBytes({ raw, unitText }: LongRow): boolean {
  return unitText === '' && /^(?=.*[a-f])[0-9a-f ]+$/i.test(raw);
}

interface Found {
  rows: readonly LongRow[];
  mark: '.' | ',';
  /** Row of each line. */
  place: ReadonlyMap<number, number>;
  inBytes: boolean;
  log: LogText;
}

function channelOf({ quantity, header, byPid, pidText }: LongName, { rows, place, mark, inBytes, log }: Found): Channel {
  const filled = rows.filter(({ raw }) => raw !== '').slice(0, SAMPLED_ROWS);
  const unitText = filled[0]?.unitText ?? '';
  const found = unitOfColumn({
    quantity,
    header,
    byPid,
    unitRowCell: unitText,
    cells: filled.map(({ raw }) => raw),
    answered: log.answers.units?.[quantity],
  });
  const unitFrom = found.from === 'unit row' ? 'unit column' : found.from;
  const channel: Channel = {
    quantity,
    header,
    unit: found.unit,
    unitFrom,
    clock: 0,
    values: new Float64Array(place.size).fill(Number.NaN),
    filled: 0,
  };
  const pid = pidText === null ? null : pidNumber(pidText);
  for (const { line, raw, unitText: here } of rows) {
    if (raw === '') continue;
    const value =
      inBytes && pid !== null
        ? (decodePid(pid, raw)?.value ?? Number.NaN)
        : readNumber(raw, { start: 0, end: raw.length }, { decimalMark: mark, suffix: found.suffix });
    if (here !== unitText) log.dropped.add(`${header}: another unit (${here}) than before`, line);
    else if (Number.isNaN(value)) log.dropped.add(`${header}: no number`, line);
    else {
      channel.values[place.get(line) ?? 0] = value;
      channel.filled += 1;
    }
  }
  return channel;
}
