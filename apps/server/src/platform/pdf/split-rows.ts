/** What a laid-out document measures, in CSS px on its sheet. */
export interface Measured {
  /** Height that one page has for its contents. */
  pagePx: number;
  /** All of it, as if on one endless page. */
  wholePx: number;
  /** From the top of the document to the first row. */
  abovePx: number;
  /** The table's head, which is repeated on every page. */
  headPx: number;
  rowsPx: readonly number[];
  /** The sums, which stay in one piece. */
  sumsPx: number;
}

/** A line of text with its padding, carried or brought. */
const CARRY_PX = 37;
/** Layout on paper and on the screen differ by fractions of a px a row. */
const SPARE_PX = 12;
/** Sums at the head of a page stand under at least so many rows. */
const LAST_ROWS = 2;

/**
 * How many rows go on each page, so that a carried sum has room at every page's foot and a brought one at its head, and the sums
 * are never left on a page without a row. One number: all on one page.
 *
 * @example splitRows({ pagePx: 1000, wholePx: 900, abovePx: 300, headPx: 30, rowsPx: [36, 36], sumsPx: 150 }) // [2]
 */
export function splitRows({ pagePx, wholePx, abovePx, headPx, rowsPx, sumsPx }: Measured): number[] {
  if (wholePx <= pagePx || rowsPx.length === 0) return [rowsPx.length];
  const usable = pagePx - SPARE_PX;
  const rooms = (page: number): number => (page === 0 ? usable - abovePx : usable - headPx - CARRY_PX);
  const pages: number[][] = [[]];
  let filled = 0;
  for (const [index, height] of rowsPx.entries()) {
    const page = pages.length - 1;
    const isLast = index === rowsPx.length - 1;
    const need = isLast ? height : height + CARRY_PX;
    const current = pages[page] ?? [];
    if (current.length > 0 && filled + need > rooms(page)) {
      pages.push([height]);
      filled = height;
    } else {
      current.push(height);
      filled += height;
    }
  }
  const last = pages.at(-1) ?? [];
  if (filled + sumsPx > rooms(pages.length - 1) && last.length > LAST_ROWS) pages.push(last.splice(last.length - LAST_ROWS));
  return pages.map(({ length }) => length);
}
