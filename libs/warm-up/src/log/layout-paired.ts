import { isBlank, newBounds, splitCells } from './cells.ts';
import { type Channel, type Layout } from './channel.ts';
import { decimalMark } from './decimal-mark.ts';
import { type LogText } from './log-text.ts';
import { QUANTITIES } from './quantity.ts';
import { readNumber } from './read-number.ts';
import { readTimeUnit } from './read-unit.ts';
import { unitOfColumn } from './unit-of-column.ts';
import { unitRowAfter } from './unit-row.ts';

const SAMPLED_ROWS = 400;

/** Headers that alternate between a time and a quantity: every channel brings its own clock. */
export function isPaired(headers: readonly string[]): boolean {
  const times = headers.flatMap((header, index) => (/^time\b/i.test(header.trim()) ? [index] : []));
  return times.length >= 2 && times.every((index, place) => index === (times[0] ?? 0) + 2 * place);
}

/** Reads a file in pairs of time and value; the row only keeps them company. */
export function layoutPaired({ lines, header, chosen, answers, dropped }: LogText): Layout {
  const unitRow = unitRowAfter(lines, header, chosen);
  const firstLine = header.line + (unitRow ? 2 : 1);
  const bounds = newBounds();
  const rows: { line: number; cells: string[] }[] = [];
  for (let line = firstLine; line < lines.count; line += 1) {
    if (!isBlank(lines, line)) rows.push({ line: line + 1, cells: splitCells(lines, line, { separator: header.separator, bounds }) });
  }
  const mark = decimalMark(rows.slice(0, SAMPLED_ROWS).flatMap(({ cells }) => cells));
  const pairs = QUANTITIES.flatMap((quantity) => {
    const column = chosen.byQuantity[quantity];
    return column === undefined || column === 0 ? [] : [{ quantity, column }];
  });
  const channels = pairs.map(({ quantity, column }, clock): Channel => {
    const filled = rows.flatMap(({ cells }) => (/\d/.test(cells[column] ?? '') ? [cells[column] ?? ''] : [])).slice(0, SAMPLED_ROWS);
    const found = unitOfColumn({
      quantity,
      header: header.cells[column] ?? '',
      byPid: chosen.recognised[column]?.byPid === true,
      unitRowCell: unitRow?.[column] ?? '',
      cells: filled,
      answered: answers.units?.[quantity],
    });
    const channel: Channel = {
      quantity,
      header: header.cells[column] ?? '',
      unit: found.unit,
      unitFrom: found.from,
      clock,
      values: new Float64Array(rows.length).fill(Number.NaN),
      filled: 0,
    };
    rows.forEach(({ line, cells }, row) => {
      const cell = cells[column] ?? '';
      if (cell === '') return;
      const value = readNumber(cell, { start: 0, end: cell.length }, { decimalMark: mark, suffix: found.suffix });
      if (Number.isNaN(value)) return dropped.add(`${channel.header}: no number`, line);
      channel.values[row] = value;
      channel.filled += 1;
    });
    return channel;
  });
  return {
    channels,
    clocks: pairs.map(({ column }) => ({
      header: header.cells[column - 1] ?? '',
      headerUnit: readTimeUnit(unitRow?.[column - 1] ?? '') ?? chosen.recognised[column - 1]?.timeUnit ?? null,
      numbers: null,
      cells: () => rows.map(({ cells }) => cells[column - 1] ?? ''),
    })),
    sharedRows: false,
    lineOf: rows.map(({ line }) => line),
    decimalMark: mark,
    otherNames: [],
    problem: null,
  };
}
