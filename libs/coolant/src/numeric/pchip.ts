import { bisect } from './bisect.ts';
import { item } from './item.ts';

/** A smooth curve through the rows of a table that never swings beyond them. */
export interface MonotoneCurve {
  /** The curve's height; outside the table the end rows hold. */
  readonly at: (x: number) => number;
  /** Where a falling curve has this height; outside the table the end rows hold. */
  readonly whereFallingTo: (y: number) => number;
}

function endSlope(h: readonly [number, number], d: readonly [number, number]): number {
  const slope = ((2 * h[0] + h[1]) * d[0] - h[0] * d[1]) / (h[0] + h[1]);
  if (Math.sign(slope) !== Math.sign(d[0])) return 0;
  return Math.sign(d[0]) !== Math.sign(d[1]) && Math.abs(slope) > 3 * Math.abs(d[0]) ? 3 * d[0] : slope;
}

function slopesOf(xs: readonly number[], ys: readonly number[]): readonly number[] {
  const h = xs.slice(1).map((x, i) => x - item(xs, i));
  const d = ys.slice(1).map((y, i) => (y - item(ys, i)) / item(h, i));
  const last = xs.length - 1;
  return xs.map((_x, i) => {
    if (i === 0) return endSlope([item(h, 0), item(h, 1)], [item(d, 0), item(d, 1)]);
    if (i === last) return endSlope([item(h, last - 1), item(h, last - 2)], [item(d, last - 1), item(d, last - 2)]);
    const before = item(d, i - 1);
    const after = item(d, i);
    if (before * after <= 0) return 0;
    const weightBefore = 2 * item(h, i) + item(h, i - 1);
    const weightAfter = item(h, i) + 2 * item(h, i - 1);
    return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
  });
}

/** The last row whose key, taken in rising order, is not beyond the value. */
function segmentOf(key: (row: number) => number, value: number, last: number): number {
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (key(middle) <= value) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Monotone cubic interpolation (PCHIP) of a table of at least three rows.
 *
 * Why: straight lines put corners into a freezing curve, and an ordinary spline may swing so that more glycol would
 * seem to freeze warmer. Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304.
 *
 * @param xs Ascending values
 * @param ys As many values, falling where `whereFallingTo` is used
 * @example pchip([0, 1, 2], [0, -1, -4]).at(1) // -1
 */
export function pchip(xs: readonly number[], ys: readonly number[]): MonotoneCurve {
  const last = xs.length - 1;
  const slopes = slopesOf(xs, ys);

  const inSegment = (row: number, x: number): number => {
    const h = item(xs, row + 1) - item(xs, row);
    const t = (x - item(xs, row)) / h;
    const y0 = item(ys, row);
    const y1 = item(ys, row + 1);
    const m0 = h * item(slopes, row);
    const m1 = h * item(slopes, row + 1);
    const rise = y1 - y0;
    return y0 + t * (m0 + t * (3 * rise - 2 * m0 - m1 + t * (m0 + m1 - 2 * rise)));
  };

  const at = (x: number): number => {
    if (x <= item(xs, 0)) return item(ys, 0);
    if (x >= item(xs, last)) return item(ys, last);
    return inSegment(
      segmentOf((row) => item(xs, row), x, last),
      x,
    );
  };

  const whereFallingTo = (y: number): number => {
    if (y >= item(ys, 0)) return item(xs, 0);
    if (y <= item(ys, last)) return item(xs, last);
    const row = segmentOf((i) => -item(ys, i), -y, last);
    if (y === item(ys, row)) return item(xs, row);
    return bisect((x) => -inSegment(row, x), -y, { low: item(xs, row), high: item(xs, row + 1) });
  };

  return { at, whereFallingTo };
}
