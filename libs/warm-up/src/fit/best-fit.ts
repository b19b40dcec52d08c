import { solve } from './solve.ts';

/** Products of the terms with one another and with the curve; place 0 is the level, place n the n-th term. */
export interface NormalSums {
  products: number[][];
  targets: number[];
  total: number;
  count: number;
}

/** The curve is level + Σ weight · term, all counted from the start of the window. */
export interface Fit {
  level: number;
  weights: number[];
  squares: number;
  rms: number;
}

/**
 * Least squares from the sums, where marked terms may not become negative (heat warms, a radiator cools). With so few terms every choice
 * of the ones held at zero is tried, which is exact. Null when no choice can be solved.
 */
export function bestFit(sums: NormalSums, notNegative: readonly boolean[]): Fit | null {
  const all = notNegative.map((_, index) => index);
  const whole = fitOf(sums, all, notNegative);
  if (whole) return whole;
  const bound = all.filter((index) => notNegative[index]);
  const free = all.filter((index) => !notNegative[index]);
  let best: Fit | null = null;
  for (let choice = 0; choice < (1 << bound.length) - 1; choice += 1) {
    const fit = fitOf(sums, [...free, ...bound.filter((_, bit) => (choice >> bit) & 1)], notNegative);
    if (fit && (!best || fit.squares < best.squares)) best = fit;
  }
  return best;
}

function fitOf({ products, targets, total, count }: NormalSums, used: readonly number[], notNegative: readonly boolean[]): Fit | null {
  const places = [0, ...used.map((index) => index + 1)];
  const part = solve(
    places.map((row) => places.map((column) => products[row]?.[column] ?? 0)),
    places.map((row) => targets[row] ?? 0),
  );
  if (!part) return null;
  if (used.some((index, place) => notNegative[index] && (part[place + 1] ?? 0) < 0)) return null;
  const weights = new Array<number>(notNegative.length).fill(0);
  used.forEach((index, place) => (weights[index] = part[place + 1] ?? 0));
  const explained = places.reduce((sum, place, at) => sum + (part[at] ?? 0) * (targets[place] ?? 0), 0);
  const squares = Math.max(0, total - explained);
  return { level: part[0] ?? 0, weights, squares, rms: Math.sqrt(squares / count) };
}
