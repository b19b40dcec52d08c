import { COLUMN_NAMES } from './column-names.ts';
import { decodeText, guessEncoding } from './decode-text.ts';
import type { ColumnField, DayOrder, FileReading, FileRow } from './file-reading.types.ts';
import { guessSeparator, splitRows } from './split-rows.ts';

/** Banners above the names of the columns are never longer. */
const HEAD_WITHIN = 15;
const MONEY_FIELDS: readonly ColumnField[] = ['amount', 'debit', 'credit'];

const plain = (cell: string): string =>
  cell
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}. ]+/gu, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();

/**
 * How a file seems to be written; each part of the guess can be changed. The columns go by the names in the row that has most
 * names we know.
 */
export function guessReading(bytes: Uint8Array): FileReading {
  const encoding = guessEncoding(bytes);
  const text = decodeText(bytes, encoding);
  const separator = guessSeparator(text);
  const split = splitRows(text, separator);
  const rows = split.ok ? split.rows : [];
  const head = rows
    .slice(0, HEAD_WITHIN)
    .map((row) => ({ row, columns: namedColumns(row.cells) }))
    .reduce<{ row: FileRow; columns: FileReading['columns'] } | undefined>(
      (best, each) => (Object.keys(each.columns).length > Object.keys(best?.columns ?? {}).length ? each : best),
      undefined,
    );
  const columns = head?.columns ?? {};
  const body = rows.filter(({ line }) => line > (head?.row.line ?? 0));
  const cellsOf = (field: ColumnField): string[] => {
    const at = columns[field];
    return at === undefined ? [] : body.map(({ cells }) => cells[at] ?? '');
  };
  return {
    encoding,
    separator,
    decimalMark: guessDecimalMark(MONEY_FIELDS.flatMap(cellsOf), separator),
    dayOrder: guessDayOrder(cellsOf('date')),
    headLine: head?.row.line ?? 0,
    columns,
  };
}

function namedColumns(cells: readonly string[]): FileReading['columns'] {
  const columns: FileReading['columns'] = {};
  for (const { field, names } of COLUMN_NAMES) {
    const at = cells.findIndex((cell, index) => names.test(plain(cell)) && !Object.values(columns).includes(index));
    if (at >= 0) columns[field] = at;
  }
  // A statement with two columns for money needs no third.
  if (columns.debit !== undefined && columns.credit !== undefined) delete columns.amount;
  return columns;
}

/** By the last mark before one or two digits; where no amount tells, a file split by semicolons writes commas. */
function guessDecimalMark(amounts: readonly string[], separator: string): '.' | ',' {
  const commas = amounts.filter((amount) => /,\d{1,2}\D*$/.test(amount)).length;
  const points = amounts.filter((amount) => /\.\d{1,2}\D*$/.test(amount)).length;
  if (commas === points) return separator === ';' && points === 0 ? ',' : '.';
  return commas > points ? ',' : '.';
}

/** A day above 12 tells; else the day goes first, as where we are. */
function guessDayOrder(dates: readonly string[]): DayOrder {
  if (dates.some((date) => /^\d{4}\D/.test(date))) return 'ymd';
  return dates.some((date) => /^\d{1,2}\D(1[3-9]|2\d|3[01])\D/.test(date)) ? 'mdy' : 'dmy';
}
