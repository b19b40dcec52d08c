import { bestFit, type Fit } from '../fit/best-fit.ts';
import { type Window } from '../fit/fit-curve.ts';
import { type Grid } from '../grid/grid.ts';
import { type HeatSums } from './heat-sums.ts';

/** The curve with its break at one place (steps of the grid, fractions allowed). */
export interface BrokenFit {
  at: number;
  fit: Fit;
  tempC: number;
  curve: (place: number) => number;
}

/** Gives the best curve for any place of the break. */
export type BreakFitter = (at: number) => BrokenFit | null;

/**
 * Prepares fits of `level + time + heat − loss`, from which after the break a share of time and heat goes missing. What a break changes
 * are sums from the break to the end; with those sums kept for every step, each place of the break costs the same few operations.
 */
export function breakFitter(grid: Grid, sums: HeatSums, window: Window): BreakFitter {
  const coming = [sums.time, ...(sums.heat ? [sums.heat] : []), ...(sums.loss ? [sums.loss] : [])];
  const going = sums.heat ? 2 : 1;
  const notNegative = [...coming.map((_, term) => term > 0), ...new Array<boolean>(going).fill(true)];
  const tails = tailSums(grid.coolantC, coming, window);
  const start = grid.coolantC[window.from] ?? 0;
  const origin = (term: number): number => coming[term]?.[window.from] ?? 0;
  const since = (term: number, place: number): number => valueAt(coming[term], place) - origin(term);
  const curveAt = tails.columns - 1;
  return (at) => {
    const breaks = Array.from({ length: going }, (_, term) => since(term, at));
    const cut = Math.ceil(at) - window.from;
    // Place p of the sums: 0 the level, then the coming terms, then the missing ones.
    const product = (left: number, right: number): number => {
      const [low, high] = left <= right ? [left, right] : [right, left];
      if (high <= coming.length) return tails.sum(low, high, 0);
      const missing = high - coming.length;
      if (low <= coming.length) return (breaks[missing - 1] ?? 0) * tails.sum(0, low, cut) - tails.sum(low, missing, cut);
      const other = low - coming.length;
      const here = breaks[missing - 1] ?? 0;
      const there = breaks[other - 1] ?? 0;
      return (
        tails.sum(missing, other, cut) -
        here * tails.sum(0, other, cut) -
        there * tails.sum(0, missing, cut) +
        here * there * tails.sum(0, 0, cut)
      );
    };
    const places = Array.from({ length: notNegative.length + 1 }, (_, place) => place);
    const target = (place: number): number => {
      if (place <= coming.length) return tails.sum(place, curveAt, 0);
      const missing = place - coming.length;
      return (breaks[missing - 1] ?? 0) * tails.sum(0, curveAt, cut) - tails.sum(missing, curveAt, cut);
    };
    const count = tails.sum(0, 0, 0);
    if (count < places.length + 2) return null;
    const fit = bestFit(
      {
        products: places.map((row) => places.map((column) => product(row, column))),
        targets: places.map(target),
        total: tails.sum(curveAt, curveAt, 0),
        count,
      },
      notNegative,
    );
    if (!fit) return null;
    const curve = (place: number): number => {
      let tempC = start + fit.level;
      coming.forEach((_, term) => (tempC += (fit.weights[term] ?? 0) * since(term, place)));
      breaks.forEach((from, term) => (tempC -= (fit.weights[coming.length + term] ?? 0) * Math.max(0, since(term, place) - from)));
      return tempC;
    };
    return { at, fit, tempC: curve(at), curve };
  };
}

interface TailSums {
  columns: number;
  /** Σ column × column from a step of the window to its end; column 0 is 1, the last one the curve. */
  sum: (left: number, right: number, from: number) => number;
}

function tailSums(curve: Float64Array, terms: readonly Float64Array[], { from, to, skip }: Window): TailSums {
  const sources = [...terms, curve];
  const columns = sources.length + 1;
  const length = to - from + 1;
  const tables = Array.from({ length: columns * columns }, () => new Float64Array(length + 1));
  const row = new Float64Array(columns).fill(1);
  for (let step = length - 1; step >= 0; step -= 1) {
    const counted = skip[from + step] !== 1;
    sources.forEach((source, column) => (row[column + 1] = (source[from + step] ?? 0) - (source[from] ?? 0)));
    for (let left = 0; left < columns; left += 1) {
      for (let right = left; right < columns; right += 1) {
        const table = tables[left * columns + right];
        if (table) table[step] = (table[step + 1] ?? 0) + (counted ? (row[left] ?? 0) * (row[right] ?? 0) : 0);
      }
    }
  }
  return { columns, sum: (left, right, step) => tables[Math.min(left, right) * columns + Math.max(left, right)]?.[step] ?? 0 };
}

function valueAt(values: Float64Array | undefined, at: number): number {
  const left = Math.floor(at);
  const from = values?.[left] ?? 0;
  return from + ((values?.[left + 1] ?? from) - from) * (at - left);
}
