import { item } from './item.ts';

/**
 * A table read in between its rows by straight lines.
 *
 * @param xs Ascending values of the column looked up
 * @param ys Values of the column wanted, as many
 * @param x The value looked up; outside the table the end rows hold
 * @example linearTable([0, 10], [0, 5])(4) // 2
 */
export function linearTable(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  return (x) => {
    const last = xs.length - 1;
    if (x <= item(xs, 0)) return item(ys, 0);
    if (x >= item(xs, last)) return item(ys, last);
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (item(xs, middle) <= x) low = middle;
      else high = middle;
    }
    const share = (x - item(xs, low)) / (item(xs, high) - item(xs, low));
    return item(ys, low) + share * (item(ys, high) - item(ys, low));
  };
}
