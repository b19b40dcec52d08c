import { splitCells } from './cells.ts';
import { LONG_NAME_WORDS, LONG_VALUE_WORDS } from './column-words.ts';
import { lineText, type Lines } from './lines.ts';
import { recogniseColumn } from './recognise-column.ts';

/** The line that names the columns. */
export interface Header {
  line: number;
  separator: string;
  cells: string[];
}

const SEPARATORS = [';', '\t', ',', '|'] as const;
const LOOKED_AT = 60;

/**
 * Looks for the line with the most known column names among the first ones, whatever stands before it. Without any, the first line with
 * several cells serves, or made-up names where that line holds numbers. Null when nothing looks like a table.
 */
export function findHeader(lines: Lines): Header | null {
  let best: (Header & { score: number }) | null = null;
  for (let line = 0; line < Math.min(lines.count, LOOKED_AT); line += 1) {
    const text = lineText(lines, line);
    if (!/[a-z]/i.test(text)) continue;
    for (const separator of SEPARATORS) {
      if (!text.includes(separator)) continue;
      const cells = splitCells(lines, line, { separator });
      const score = scoreOf(cells);
      if (score > (best?.score ?? 0)) best = { line, separator, cells, score };
    }
  }
  return best ?? unnamed(lines);
}

function unnamed(lines: Lines): Header | null {
  for (let line = 0; line < Math.min(lines.count, LOOKED_AT); line += 1) {
    const text = lineText(lines, line);
    const separator = SEPARATORS.find((one) => text.includes(one));
    if (separator === undefined) continue;
    const cells = splitCells(lines, line, { separator });
    if (cells.some((cell) => /[a-z]/i.test(cell))) return { line, separator, cells };
    return { line: line - 1, separator, cells: cells.map((_, index) => `column ${index + 1}`) };
  }
  return null;
}

function scoreOf(cells: readonly string[]): number {
  let score = 0;
  for (const cell of cells) {
    if (cell === '' || cell.length > 120 || /^[\d.,:\s-]+$/.test(cell)) continue;
    const { quantity, timeScore } = recogniseColumn(cell);
    if (quantity) score += 3;
    if (timeScore > 0) score += 2;
  }
  return isLongHeader(cells) ? score + 6 : score;
}

/** One reading per row: a column with the channel's name or number, and one with its value. */
export function isLongHeader(cells: readonly string[]): boolean {
  const names = cells.map((cell) => cell.trim().toLowerCase());
  return names.some((name) => LONG_NAME_WORDS.test(name)) && names.some((name) => LONG_VALUE_WORDS.test(name));
}
