import { type Fit } from '../fit/best-fit.ts';
import { fitCurve, type Term, type Window } from '../fit/fit-curve.ts';
import { type Grid } from '../grid/grid.ts';
import { type HeatSums } from './heat-sums.ts';

/**
 * The best curve of an engine whose valve does not move: heat in, loss to the air, loss through a radiator that grows with road speed.
 */
export function noKneeFit(grid: Grid, sums: HeatSums, window: Window): (Fit & { lossPerS: number; speedLossPerS: number }) | null {
  const terms: Term[] = [{ values: sums.time, notNegative: true }];
  if (sums.heat) terms.push({ values: sums.heat, notNegative: true });
  const lossAt = terms.length;
  if (sums.loss) terms.push({ values: sums.loss, notNegative: true });
  if (sums.speedLoss) terms.push({ values: sums.speedLoss, notNegative: true });
  const fit = fitCurve(grid.coolantC, terms, window);
  if (!fit) return null;
  return {
    ...fit,
    lossPerS: sums.loss ? (fit.weights[lossAt] ?? 0) / 60 : 0,
    speedLossPerS: sums.speedLoss ? (fit.weights[lossAt + 1] ?? 0) / 60 : 0,
  };
}
