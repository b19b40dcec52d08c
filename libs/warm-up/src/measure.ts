import { type CleanLog } from './clean/clean-log.ts';
import { type Deglitched } from './clean/drop-glitches.ts';
import { coldStart } from './describe/cold-start.ts';
import { fallWithSpeed } from './describe/fall-with-speed.ts';
import { fanCycling } from './describe/fan-cycling.ts';
import { heatShare } from './describe/heat-share.ts';
import { settledLevel } from './describe/settled-level.ts';
import { airTemperature } from './grid/air-temperature.ts';
import { type Grid } from './grid/grid.ts';
import { chooseKnee } from './knee/choose-knee.ts';
import { heatSums, type HeatSums } from './knee/heat-sums.ts';
import { noKneeFit } from './knee/no-knee-fit.ts';
import { opening } from './knee/opening.ts';
import { type WarmUpInput } from './types/warm-up-input.ts';
import { type Findings } from './verdict/findings.ts';

/** A shorter climb can't part a loss from the block's own start. */
const SHORTEST_CLIMB_S = 420;
const CLEAR_OF_KNEE_S = 20;
/** From where a curve counts as near its level. */
const NEAR_LEVEL_K = 8;

interface Prepared {
  grid: Grid;
  log: CleanLog;
  deglitched: Deglitched;
}

/** Takes all measurements that the verdict and the chart need. */
export function measure(input: WarmUpInput, { grid, log, deglitched }: Prepared): Findings {
  const air = airTemperature(grid);
  const sums = heatSums(grid, air.airC);
  const knee = chooseKnee(grid, sums);
  const level = settledLevel(grid, knee?.timeS ?? null);
  const highestC = grid.smoothC.reduce((highest, value) => Math.max(highest, value), Number.NEGATIVE_INFINITY);
  const nearLevel = Math.max(
    0,
    grid.smoothC.findIndex((value) => value >= highestC - NEAR_LEVEL_K),
  );
  const beforeKnee = knee && knee.timeS >= SHORTEST_CLIMB_S ? Math.floor((knee.timeS - CLEAR_OF_KNEE_S) / grid.stepS) : null;
  return {
    log,
    deglitched,
    readings: input.samples.length,
    grid,
    air,
    start: coldStart(deglitched.log),
    knee,
    opening: knee && opening(knee, level),
    level,
    lossPerS: lossUpTo(grid, sums, grid.size - 1),
    lossShutPerS: beforeKnee === null ? null : lossUpTo(grid, sums, beforeKnee),
    fall: fallWithSpeed(grid, nearLevel),
    fan: fanCycling(grid),
    heat: heatShare(grid),
    heater: input.heater ?? 'unknown',
    nominalC: input.nominalOpeningC ?? null,
    kind: input.thermostatKind ?? (input.nominalOpeningC === undefined ? 'unknown' : 'wax'),
    highestC,
    endC: grid.smoothC[grid.size - 1] ?? 0,
  };
}

function lossUpTo(grid: Grid, sums: HeatSums, to: number): number | null {
  const fit = noKneeFit(grid, sums, { from: 0, to, skip: grid.bridged });
  if (!fit || !sums.loss) return null;
  let meanKmh = 0;
  for (let index = 0; index <= to; index += 1) meanKmh += (grid.speedKmh?.[index] ?? 0) / (to + 1);
  return fit.lossPerS + (fit.speedLossPerS * meanKmh) / 60;
}
