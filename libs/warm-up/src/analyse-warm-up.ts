import { cleanLog } from './clean/clean-log.ts';
import { dropGlitches } from './clean/drop-glitches.ts';
import { coldStart } from './describe/cold-start.ts';
import { fallWithSpeed } from './describe/fall-with-speed.ts';
import { fanCycling } from './describe/fan-cycling.ts';
import { firstPeak } from './describe/first-peak.ts';
import { heatShare } from './describe/heat-share.ts';
import { settledLevel } from './describe/settled-level.ts';
import { timeTo } from './describe/time-to.ts';
import { warmUpRate } from './describe/warm-up-rate.ts';
import { airTemperature } from './grid/air-temperature.ts';
import { type Grid } from './grid/grid.ts';
import { toGrid } from './grid/to-grid.ts';
import { chooseKnee } from './knee/choose-knee.ts';
import { type KneeFit } from './knee/fit-knee.ts';
import { heatSums, type HeatSums } from './knee/heat-sums.ts';
import { noKneeFit } from './knee/no-knee-fit.ts';
import { opening } from './knee/opening.ts';
import { type HeaterUse } from './model/heater-share.ts';
import { type Cleaned, type FittedLine, type Knee, type WarmUpAnalysis } from './types/analysis.ts';
import { type Sample } from './types/sample.ts';
import { type ThermostatKind } from './types/thermostat-kind.ts';
import { decide } from './verdict/decide.ts';
import { type Findings } from './verdict/findings.ts';
import { advice } from './words/advice.ts';
import { cautions } from './words/cautions.ts';
import { yardstick } from './words/yardstick.ts';

export interface WarmUpInput {
  samples: readonly Sample[];
  nominalOpeningC?: number;
  thermostatKind?: ThermostatKind;
  heater?: HeaterUse;
}

export function analyseWarmUp(input: WarmUpInput): WarmUpAnalysis {
  const cleaned = cleanLog(input.samples);
  const deglitched = dropGlitches(cleaned);
  const grid = toGrid(deglitched.log);
  const report: Cleaned = {
    samples: input.samples.length,
    used: deglitched.log.count,
    dropped: deglitched.log.dropped,
    longestGapS: grid?.longestGapS ?? 0,
  };
  if (!grid) throw new Error('todo');
  const findings = measure(input, { grid, cleaned, deglitched });
  const opinion = decide(findings);
  const { knee, level, start, nominalC } = findings;
  return {
    verdict: opinion.verdict,
    confidence: Math.round(opinion.confidence * 100) / 100,
    openingC: findings.kind === 'wax' && (opinion.verdict === 'normal' || opinion.verdict === 'opens-early' || opinion.verdict === 'leaks') ? findings.opening : null,
    firstPeakC: firstPeak(grid, knee?.timeS ?? null),
    plateauC: level?.levelC ?? null,
    coldStart: start.coldStart,
    warmUpRateCPerMin: warmUpRate(grid, knee?.tempC ?? findings.highestC),
    reasons: opinion.reasons,
    knee: knee && kneeOf(grid, knee),
    fit: knee && lineOf(grid, knee),
    timeTo80S: timeTo(grid, 80),
    fallWithSpeed: findings.fall,
    fanCycling: findings.fan,
    heatInput: findings.heat,
    yardstick: yardstick(findings),
    airC: findings.air.airC,
    startC: start.startC,
    highestC: findings.highestC,
    advice: advice(findings, opinion.verdict),
    cautions: cautions(opinion.verdict, findings.highestC),
    cleaned: report,
  };
  void nominalC;
}

function measure(input: WarmUpInput, { grid, cleaned, deglitched }: { grid: Grid; cleaned: Findings['log']; deglitched: Findings['deglitched'] }): Findings {
  const air = airTemperature(grid);
  const start = coldStart(deglitched.log);
  const sums = heatSums(grid, air.airC);
  const knee = chooseKnee(grid, sums);
  const level = settledLevel(grid, knee?.timeS ?? null);
  let highestC = Number.NEGATIVE_INFINITY;
  for (const value of grid.smoothC) highestC = Math.max(highestC, value);
  const heat = heatShare(grid);
  return {
    log: cleaned,
    deglitched,
    readings: input.samples.length,
    grid,
    air,
    start,
    knee,
    opening: knee && opening(knee, level),
    level,
    lossPerS: lossUpTo(grid, sums, grid.size - 1),
    lossShutPerS: knee && knee.timeS >= SHORTEST_CLIMB_S ? lossUpTo(grid, sums, Math.floor((knee.timeS - CLEAR_OF_KNEE_S) / grid.stepS)) : null,
    fall: fallWithSpeed(grid, nearLevel(grid, highestC)),
    fan: fanCycling(grid),
    heat,
    heater: input.heater ?? 'unknown',
    nominalC: input.nominalOpeningC ?? null,
    kind: input.thermostatKind ?? (input.nominalOpeningC === undefined ? 'unknown' : 'wax'),
    highestC,
    endC: grid.smoothC[grid.size - 1] ?? 0,
  };
}

/** A shorter climb can't part a loss from the block's own start. */
const SHORTEST_CLIMB_S = 420;
const CLEAR_OF_KNEE_S = 20;

function lossUpTo(grid: Grid, sums: HeatSums, to: number): number | null {
  const fit = noKneeFit(grid, sums, { from: 0, to, skip: grid.bridged });
  if (!fit || !sums.loss) return null;
  let meanKmh = 0;
  for (let index = 0; index <= to; index += 1) meanKmh += (grid.speedKmh?.[index] ?? 0) / (to + 1);
  return fit.lossPerS + (fit.speedLossPerS * meanKmh) / 60;
}

/** First step near the top of the curve. */
function nearLevel(grid: Grid, highestC: number): number {
  return Math.max(0, grid.smoothC.findIndex((value) => value >= highestC - 8));
}

function kneeOf(grid: Grid, knee: KneeFit): Knee {
  return {
    timeS: grid.startS + knee.timeS,
    tempC: knee.tempC,
    interval: { lowC: knee.lowC, highC: knee.highC, fromS: grid.startS + knee.fromS, toS: grid.startS + knee.toS },
    sharpness: knee.sharpness,
  };
}

function lineOf(grid: Grid, knee: KneeFit): FittedLine {
  const points = [];
  for (let index = knee.window.from; index <= knee.window.to; index += 1) points.push({ timeS: grid.startS + (grid.timeS[index] ?? 0), tempC: knee.curve(index) });
  return { against: grid.heatFrom, points };
}
