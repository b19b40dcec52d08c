/** Where the cells of a line begin and end, without copying them; reused from line to line. */
export interface CellBounds {
  starts: Int32Array;
  ends: Int32Array;
  count: number;
}

const QUOTE = 34;
const SPACE = 32;
const RETURN = 13;
const MOST_CELLS = 512;

export function newBounds(): CellBounds {
  return { starts: new Int32Array(MOST_CELLS), ends: new Int32Array(MOST_CELLS), count: 0 };
}

/** Splits one line at a separator, minding quotes; bounds are trimmed of spaces and of the quotes themselves. */
export function findCells(line: string, separator: number, bounds: CellBounds): void {
  let end = line.length;
  if (end > 0 && line.charCodeAt(end - 1) === RETURN) end -= 1;
  let count = 0;
  let at = 0;
  while (at <= end && count < MOST_CELLS) {
    while (at < end && line.charCodeAt(at) === SPACE) at += 1;
    let start = at;
    let stop: number;
    if (at < end && line.charCodeAt(at) === QUOTE) {
      start = at + 1;
      const closing = line.indexOf('"', start);
      stop = closing < 0 || closing > end ? end : closing;
      at = stop;
      while (at < end && line.charCodeAt(at) !== separator) at += 1;
    } else {
      while (at < end && line.charCodeAt(at) !== separator) at += 1;
      stop = at;
    }
    while (stop > start && line.charCodeAt(stop - 1) === SPACE) stop -= 1;
    bounds.starts[count] = start;
    bounds.ends[count] = stop;
    count += 1;
    at += 1;
  }
  bounds.count = count;
}

/** The text of one cell; empty beyond the last. */
export function cellText(line: string, bounds: CellBounds, index: number): string {
  return index < bounds.count ? line.slice(bounds.starts[index], bounds.ends[index]) : '';
}

/** All cells of a line as texts, for the few lines that are looked at closely. */
export function splitCells(line: string, separator: string, bounds: CellBounds = newBounds()): string[] {
  findCells(line, separator.charCodeAt(0), bounds);
  return Array.from({ length: bounds.count }, (_, index) => cellText(line, bounds, index));
}
