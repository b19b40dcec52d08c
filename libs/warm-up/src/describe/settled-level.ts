import { type Grid } from '../grid/grid.ts';
import { quantile } from '../grid/quantile.ts';

/** A level that the engine kept, whatever kept it there. */
export interface Level {
  levelC: number;
  from: number;
  /** Middle nine tenths of the readings. */
  lowC: number;
  highC: number;
  /** Upper quarter of the first ten minutes: what the valve held before traffic, weather and heater pulled it down. */
  earlyC: number;
  /** °C per minute over the whole level. */
  driftCPerMin: number;
  lastsS: number;
}

const AFTER_KNEE_S = 90;
const LEAST_S = 120;
const EARLY_S = 600;
const SETTLED_S = 300;
const SETTLED_C_PER_MIN = 0.5;
const SETTLED_RANGE_K = 5;

/** The level after the knee; without a knee, the last five minutes if they are nearly flat. Null while the engine is still climbing. */
export function settledLevel(grid: Grid, kneeS: number | null): Level | null {
  const from =
    kneeS === null ? grid.size - Math.round(SETTLED_S / grid.stepS) : grid.timeS.findIndex((value) => value >= kneeS + AFTER_KNEE_S);
  if (from < 0 || (grid.size - from) * grid.stepS < LEAST_S) return null;
  const readings = grid.coolantC.subarray(from).filter((_, index) => (grid.running[from + index] ?? 1) > 0.5);
  if (readings.length < LEAST_S / grid.stepS / 2) return null;
  const level = {
    levelC: quantile(readings, 0.5),
    from,
    lowC: quantile(readings, 0.05),
    highC: quantile(readings, 0.95),
    earlyC: quantile(readings.subarray(0, Math.round(EARLY_S / grid.stepS)), 0.75),
    driftCPerMin: ((grid.smoothC[grid.size - 1] ?? 0) - (grid.smoothC[from] ?? 0)) / ((grid.size - 1 - from) * (grid.stepS / 60)),
    lastsS: (grid.size - from) * grid.stepS,
  };
  if (kneeS !== null) return level;
  return Math.abs(level.driftCPerMin) <= SETTLED_C_PER_MIN && level.highC - level.lowC <= SETTLED_RANGE_K ? level : null;
}
