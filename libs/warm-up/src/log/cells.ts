import { type Lines, lineText } from './lines.ts';

/** Where the cells of a line begin and end in the whole text; reused from line to line. */
export interface CellBounds {
  starts: Int32Array;
  ends: Int32Array;
  count: number;
}

const QUOTE = 34;
const SPACE = 32;
const MOST_CELLS = 512;

export function newBounds(): CellBounds {
  return { starts: new Int32Array(MOST_CELLS), ends: new Int32Array(MOST_CELLS), count: 0 };
}

/** Splits one line at a separator, minding quotes; bounds are trimmed of spaces and of the quotes themselves. */
export function findCells(
  { text, starts, ends }: Lines,
  line: number,
  { separator, bounds }: { separator: number; bounds: CellBounds },
): void {
  const end = ends[line] ?? 0;
  let count = 0;
  let at = starts[line] ?? 0;
  while (at <= end && count < MOST_CELLS) {
    while (at < end && text.charCodeAt(at) === SPACE) at += 1;
    let start = at;
    let stop: number;
    if (at < end && text.charCodeAt(at) === QUOTE) {
      start = at + 1;
      stop = start;
      while (stop < end && text.charCodeAt(stop) !== QUOTE) stop += 1;
      at = stop;
      while (at < end && text.charCodeAt(at) !== separator) at += 1;
    } else {
      while (at < end && text.charCodeAt(at) !== separator) at += 1;
      stop = at;
    }
    while (stop > start && text.charCodeAt(stop - 1) === SPACE) stop -= 1;
    bounds.starts[count] = start;
    bounds.ends[count] = stop;
    count += 1;
    at += 1;
  }
  bounds.count = count;
}

/** The text of one cell; empty beyond the last. */
export function cellText({ text }: Lines, bounds: CellBounds, index: number): string {
  return index >= 0 && index < bounds.count ? text.slice(bounds.starts[index], bounds.ends[index]) : '';
}

/** All cells of a line as texts, for the few lines that are looked at closely. */
export function splitCells(
  lines: Lines,
  line: number,
  { separator, bounds = newBounds() }: { separator: string; bounds?: CellBounds },
): string[] {
  findCells(lines, line, { separator: separator.charCodeAt(0), bounds });
  return Array.from({ length: bounds.count }, (_, index) => cellText(lines, bounds, index));
}

export function isBlank(lines: Lines, line: number): boolean {
  return lineText(lines, line).trim() === '';
}
