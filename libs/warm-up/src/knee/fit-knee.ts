import { type Window } from '../fit/fit-curve.ts';
import { type Grid } from '../grid/grid.ts';
import { breakFitter, type BreakFitter, type BrokenFit } from './break-fitter.ts';
import { type HeatSums } from './heat-sums.ts';
import { noKneeFit } from './no-knee-fit.ts';

/** A break in the climb: from here on something takes heat away that did not before. */
export interface KneeFit {
  top: number;
  /** Seconds on the grid's clock. */
  timeS: number;
  tempC: number;
  lowC: number;
  highC: number;
  fromS: number;
  toS: number;
  /** How many times worse the best curve without a break fits; near 1 there is no knee. */
  sharpness: number;
  rms: number;
  rateBeforeCPerS: number;
  window: Window;
  /** The fitted line, by step of the grid. */
  curve: (place: number) => number;
}

const RISE_K = 20;
const AFTER_S = 200;
const FEWEST_STEPS = 8;
const MARGIN_STEPS = 3;
/** Neighbouring readings of a slow curve in whole degrees tell the same thing; about one in 20 s is new. */
const INDEPENDENT_S = 20;
/** Squares below this are the sensor's own steps. */
const FLOOR_K2 = 0.02;
const RATE_OVER_S = 60;

/**
 * Fits the climb and what follows a possible knee as one curve with a break (Lerman 1980: every place of the break is tried). Before the
 * break: time, heat input and loss to the air; after it a share of that heat goes missing. Null when too little lies around the top.
 */
export function fitKnee(grid: Grid, sums: HeatSums, top: number): KneeFit | null {
  const window = windowAround(grid, top);
  if (!window) return null;
  const fitAt = breakFitter(grid, sums, window);
  const tries: BrokenFit[] = [];
  let best: BrokenFit | null = null;
  for (let at = window.from + MARGIN_STEPS; at <= window.to - MARGIN_STEPS; at += 1) {
    const tried = fitAt(at);
    if (!tried) continue;
    tries.push(tried);
    if (!best || tried.fit.squares < best.fit.squares) best = tried;
  }
  const straight = noKneeFit(grid, sums, window);
  if (!best || !straight) return null;
  const chosen = refine(fitAt, best);
  const steps = window.to - window.from + 1;
  const limit = best.fit.squares * (1 + 4 / ((steps * grid.stepS) / INDEPENDENT_S)) + FLOOR_K2;
  const likely = tries.filter(({ fit }) => fit.squares <= limit);
  const clock = (index: number): number => (grid.timeS[0] ?? 0) + index * grid.stepS;
  return {
    top,
    timeS: clock(chosen.at),
    tempC: chosen.tempC,
    lowC: Math.min(chosen.tempC, ...likely.map(({ tempC }) => tempC)),
    highC: Math.max(chosen.tempC, ...likely.map(({ tempC }) => tempC)),
    fromS: clock(Math.min(chosen.at, likely[0]?.at ?? chosen.at)),
    toS: clock(Math.max(chosen.at, likely[likely.length - 1]?.at ?? chosen.at)),
    sharpness: (straight.squares + steps * FLOOR_K2) / (chosen.fit.squares + steps * FLOOR_K2),
    rms: chosen.fit.rms,
    rateBeforeCPerS: rateBefore(grid, Math.floor(chosen.at)),
    window,
    curve: chosen.curve,
  };
}

function windowAround(grid: Grid, top: number): Window | null {
  const topC = grid.smoothC[top] ?? 0;
  let from = top;
  while (from > 0 && (grid.smoothC[from] ?? 0) > topC - RISE_K) from -= 1;
  const to = Math.min(grid.size - 1, top + Math.round(AFTER_S / grid.stepS));
  if (top - from < FEWEST_STEPS || to - top < FEWEST_STEPS) return null;
  return { from, to, skip: grid.bridged };
}

/** Finer than the grid: golden section between the neighbours of the best step. */
function refine(fitAt: BreakFitter, near: BrokenFit): BrokenFit {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = near.at - 1;
  let high = near.at + 1;
  let best = near;
  for (let round = 0; round < 12; round += 1) {
    const left = fitAt(high - ratio * (high - low));
    const right = fitAt(low + ratio * (high - low));
    if (!left || !right) return best;
    for (const tried of [left, right]) if (tried.fit.squares < best.fit.squares) best = tried;
    if (left.fit.squares < right.fit.squares) high = right.at;
    else low = left.at;
  }
  return best;
}

function rateBefore(grid: Grid, at: number): number {
  const to = Math.max(0, at - 1);
  const from = Math.max(0, to - Math.round(RATE_OVER_S / grid.stepS));
  if (to === from) return 0;
  return Math.max(0, ((grid.smoothC[to] ?? 0) - (grid.smoothC[from] ?? 0)) / ((to - from) * grid.stepS));
}
