import { bestFit, type Fit } from './best-fit.ts';

/** One thing that can move the temperature, summed over time; some may only push one way. */
export interface Term {
  values: Float64Array;
  notNegative: boolean;
}

/** Steps from … to, both counted in; those marked in `skip` don't count. */
export interface Window {
  from: number;
  to: number;
  skip: Uint8Array;
}

/** Least squares of a curve on a few terms over a window. Curve and terms count from their values at the start: large sums lose digits. */
export function fitCurve(curve: Float64Array, terms: readonly Term[], { from, to, skip }: Window): Fit | null {
  const size = terms.length + 1;
  const products = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const targets = new Array<number>(size).fill(0);
  const start = curve[from] ?? 0;
  const origins = terms.map(({ values }) => values[from] ?? 0);
  const row = new Array<number>(size).fill(1);
  let total = 0;
  let count = 0;
  for (let index = from; index <= to; index += 1) {
    if (skip[index] === 1) continue;
    const y = (curve[index] ?? 0) - start;
    total += y * y;
    count += 1;
    for (let term = 1; term < size; term += 1) row[term] = (terms[term - 1]?.values[index] ?? 0) - (origins[term - 1] ?? 0);
    for (let left = 0; left < size; left += 1) {
      const value = row[left] ?? 0;
      targets[left] = (targets[left] ?? 0) + value * y;
      const line = products[left];
      if (!line) continue;
      for (let right = 0; right < size; right += 1) line[right] = (line[right] ?? 0) + value * (row[right] ?? 0);
    }
  }
  if (count < size + 2) return null;
  const best = bestFit(
    { products, targets, total, count },
    terms.map(({ notNegative }) => notNegative),
  );
  return best && { ...best, level: best.level + start };
}
