import { parse } from 'csv-parse/sync';
import { type FileRow, SEPARATORS, type Separator } from './file-reading.types.ts';

const MOST_ROWS = 20_000;
const MOST_COLUMNS = 60;
const SAMPLE_LINES = 20;

export type SplitRows = { ok: true; rows: FileRow[] } | { ok: false; message: string };

/** Rows of a file with the line each begins on; empty ones are left out. */
export function splitRows(text: string, separator: Separator): SplitRows {
  if (text.includes('\0')) return { ok: false, message: 'This is no text file: save it as CSV and choose it again.' };
  try {
    const records = parse(text, {
      delimiter: separator,
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
      info: true,
      to: MOST_ROWS + 1,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    if (records.length > MOST_ROWS)
      return { ok: false, message: `The file has more than ${MOST_ROWS} rows: split it and send the parts one after the other.` };
    if (records.some(({ record }) => record.length > MOST_COLUMNS))
      return { ok: false, message: `A row has more than ${MOST_COLUMNS} columns: the separator is another one, or this is no such file.` };
    return { ok: true, rows: records.map(toRow).filter(({ cells }) => cells.some((cell) => cell !== '')) };
  } catch {
    return { ok: false, message: 'A quotation mark in the file is never closed: save it as CSV anew and choose it again.' };
  }
}

/** The parser counts the lines up to a row's end; a cell with line breaks is counted back. */
function toRow({ record, info }: { record: string[]; info: { lines: number } }): FileRow {
  const breaks = record.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
  return { line: info.lines - breaks, cells: record.map((cell) => cell.trim()) };
}

/**
 * The separator that gives the most lines the same number of columns, at least two.
 *
 * @example guessSeparator('a;b\n1,5;2') // ';'
 */
export function guessSeparator(text: string): Separator {
  const sample = text.split(/\r?\n/, SAMPLE_LINES).join('\n');
  const scored = SEPARATORS.map((separator) => ({ separator, score: evenness(sample, separator) }));
  return scored.reduce((best, each) => (each.score > best.score ? each : best)).separator;
}

function evenness(sample: string, separator: Separator): number {
  const split = splitRows(sample, separator);
  if (!split.ok) return 0;
  const counts = new Map<number, number>();
  for (const { cells } of split.rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  return Math.max(0, ...[...counts].map(([columns, rows]) => (columns < 2 ? 0 : rows * 10 + columns)));
}
