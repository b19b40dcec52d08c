import { accumulate } from '../grid/accumulate.ts';
import { type Grid } from '../grid/grid.ts';

/** Everything that moves the coolant, summed over time once per log; a fit then only weighs the sums. */
export interface HeatSums {
  /** Seconds with the engine turning. */
  time: Float64Array;
  /** Heat input; null when only time was logged. */
  heat: Float64Array | null;
  /** Degrees above the air × seconds ÷ 60, negative: what block and heater lose; null when the air is not known. */
  loss: Float64Array | null;
  /** The same × road speed ÷ 60 km/h: what an open radiator loses; null without speed. */
  speedLoss: Float64Array | null;
}

export function heatSums(grid: Grid, airC: number | null): HeatSums {
  const { size, stepS, running, heat, coolantC, speedKmh } = grid;
  const sum = (rate: (index: number) => number): Float64Array => accumulate(size, stepS, rate);
  const aboveAir = (index: number): number => ((coolantC[index] ?? 0) - (airC ?? 0)) / 60;
  return {
    time: sum((index) => running[index] ?? 1),
    heat: grid.heatFrom === 'time' ? null : sum((index) => (heat[index] ?? 0) * (running[index] ?? 1)),
    loss: airC === null ? null : sum((index) => -aboveAir(index)),
    speedLoss: airC === null || !speedKmh ? null : sum((index) => (-aboveAir(index) * (speedKmh[index] ?? 0)) / 60),
  };
}
