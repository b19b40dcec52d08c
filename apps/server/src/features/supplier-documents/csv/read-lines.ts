import { randomUUID } from 'node:crypto';
import { Decimal } from '#libs/money';
import type { EnteredLine } from '../reconciled.types.ts';
import { decodeText } from './decode-text.ts';
import type { BadLine, ColumnField, FileReading, FileRow } from './file-reading.types.ts';
import { readAmount } from './read-amount.ts';
import { readDay } from './read-day.ts';
import { splitRows } from './split-rows.ts';

export interface ReadLines {
  head: readonly string[];
  lines: EnteredLine[];
  bad: BadLine[];
  /** Why nothing can be read at all. */
  problem: string | undefined;
}

const LONGEST = 200;

/**
 * The lines of a supplier's file as it is read now, and those that can't be, each with its number in the file.
 *
 * @param kind of a statement amounts keep their sign; a list of credits says what it gives without one
 */
export function readLines(bytes: Uint8Array, reading: FileReading, kind: 'credit-lines' | 'statement'): ReadLines {
  const split = splitRows(decodeText(bytes, reading.encoding), reading.separator);
  if (!split.ok) return { head: [], lines: [], bad: [], problem: split.message };
  const head = split.rows.find(({ line }) => line === reading.headLine)?.cells ?? [];
  const { amount, debit, credit } = reading.columns;
  const problem =
    split.rows.length === 0
      ? 'The file is empty.'
      : amount === undefined && debit === undefined && credit === undefined
        ? 'Say which column holds the amount.'
        : undefined;
  if (problem !== undefined) return { head: head.length > 0 ? head : (split.rows[0]?.cells ?? []), lines: [], bad: [], problem };
  const read = split.rows.filter(({ line }) => line > reading.headLine).map((row) => readRow(row, reading));
  const lines = read.flatMap((each) => (each.ok ? [each.line] : []));
  return {
    head: head.length > 0 ? head : (split.rows[0]?.cells.map((_, index) => `Column ${index + 1}`) ?? []),
    lines: kind === 'credit-lines' ? givingPositive(lines) : lines,
    bad: read.flatMap((each) => (each.ok ? [] : [{ line: each.at, message: each.message }])),
    problem: undefined,
  };
}

type ReadRow = { ok: true; line: EnteredLine } | { ok: false; at: number; message: string };

function readRow({ line: at, cells }: FileRow, { columns, decimalMark, dayOrder }: FileReading): ReadRow {
  const cell = (field: ColumnField): string => {
    const column = columns[field];
    return column === undefined ? '' : (cells[column] ?? '').slice(0, LONGEST);
  };
  const money = amountOf(cell, decimalMark);
  if (!money.ok) return { ok: false, at, message: money.message };
  const date = cell('date') === '' ? null : readDay(cell('date'), dayOrder);
  if (date === undefined) return { ok: false, at, message: `“${cell('date')}” is no day as the dates are read now.` };
  const pieces = cell('quantity') === '' ? 1 : Math.abs(Number(cell('quantity').replace(decimalMark, '.')));
  if (!Number.isInteger(pieces) || pieces < 1 || pieces > 9_999)
    return { ok: false, at, message: `“${cell('quantity')}” is no number of pieces.` };
  const [number, reference, part, text] = [cell('number'), cell('reference'), cell('part'), cell('text')];
  return {
    ok: true,
    line: { id: randomUUID(), position: at, number, reference, part, text, quantity: pieces, amount: money.amount, date },
  };
}

function amountOf(cell: (field: ColumnField) => string, mark: '.' | ','): ReturnType<typeof readAmount> {
  if (cell('amount') !== '') return readAmount(cell('amount'), mark);
  const [debit, credit] = [cell('debit'), cell('credit')];
  if (debit === '' && credit === '') return { ok: false, message: 'It has no amount.' };
  const owed = readAmount(debit === '' ? '0' : debit, mark);
  const given = readAmount(credit === '' ? '0' : credit, mark);
  if (!owed.ok) return owed;
  if (!given.ok) return given;
  return { ok: true, amount: new Decimal(owed.amount).minus(new Decimal(given.amount).abs()).toFixed(2) };
}

/** Where most lines of a list of credits have a minus, the minus is what gives. */
function givingPositive(lines: EnteredLine[]): EnteredLine[] {
  const negative = lines.filter(({ amount }) => amount.startsWith('-')).length;
  if (negative * 2 <= lines.length) return lines;
  return lines.map((line) => ({ ...line, amount: new Decimal(line.amount).negated().toFixed(2) }));
}
