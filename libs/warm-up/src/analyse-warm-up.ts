import { checkInput } from './check-input.ts';
import { cleanLog, type CleanLog } from './clean/clean-log.ts';
import { dropGlitches } from './clean/drop-glitches.ts';
import { firstPeak } from './describe/first-peak.ts';
import { timeTo } from './describe/time-to.ts';
import { warmUpRate } from './describe/warm-up-rate.ts';
import { type Grid } from './grid/grid.ts';
import { toGrid } from './grid/to-grid.ts';
import { type KneeFit } from './knee/fit-knee.ts';
import { measure } from './measure.ts';
import { tooShort } from './too-short.ts';
import { type FittedLine, type Knee, type Verdict, type WarmUpAnalysis } from './types/analysis.ts';
import { type WarmUpInput } from './types/warm-up-input.ts';
import { decide } from './verdict/decide.ts';
import { advice } from './words/advice.ts';
import { behaviour } from './words/behaviour.ts';
import { cautions } from './words/cautions.ts';
import { yardstick } from './words/yardstick.ts';

/** Verdicts under which the bend is the thermostat's own opening. */
const OPENING_SEEN: ReadonlySet<Verdict> = new Set(['normal', 'opens-early', 'leaks']);
const MOST_POINTS = 60;

/**
 * Tells from a log of the coolant temperature whether the thermostat is at fault, with reasons in words, or that this log can't tell.
 * Method, sources and limits: README.
 *
 * @param input Readings in °C, km/h, 1/min, %, g/s; nominal opening temperature in °C; kind of valve; heater
 * @returns The verdict with confidence 0…1, opening temperature (plain wax only), first peak and plateau in °C, pace in °C/min, and what
 * the chart needs; what can't be had is null
 * @throws WarmUpInputError when there are no samples, too many, or the nominal temperature can't be one
 * @example analyseWarmUp({ samples, nominalOpeningC: 87 }).verdict // 'normal'
 */
export function analyseWarmUp(input: WarmUpInput): WarmUpAnalysis {
  checkInput(input);
  const log = cleanLog(input.samples);
  const deglitched = dropGlitches(log);
  const grid = toGrid(deglitched.log);
  if (!grid) return tooShort(input, deglitched.log);
  const findings = measure(input, { grid, log, deglitched });
  const { verdict, confidence, reasons } = decide(findings);
  const { knee, level, start, highestC } = findings;
  return {
    verdict,
    confidence: Math.round(confidence * 100) / 100,
    openingC: findings.kind === 'wax' && OPENING_SEEN.has(verdict) ? findings.opening : null,
    firstPeakC: firstPeak(grid, knee?.timeS ?? null),
    plateauC: level?.levelC ?? null,
    coldStart: start.coldStart,
    warmUpRateCPerMin: warmUpRate(grid, knee?.tempC ?? highestC),
    reasons,
    behaviour: behaviour(findings),
    knee: knee && kneeOf(grid, knee),
    fit: knee && lineOf(grid, knee),
    timeTo80S: timeTo(grid, 80),
    fallWithSpeed: findings.fall,
    fanCycling: findings.fan,
    heatInput: findings.heat,
    yardstick: yardstick(findings),
    airC: findings.air.airC,
    startC: start.startC,
    highestC,
    advice: advice(findings, verdict),
    cautions: cautions(verdict, highestC),
    cleaned: {
      samples: input.samples.length,
      used: deglitched.log.count,
      dropped: droppedOf(deglitched.log),
      longestGapS: grid.longestGapS,
    },
  };
}

function droppedOf(log: CleanLog): WarmUpAnalysis['cleaned']['dropped'] {
  return log.dropped.map(({ reason, count }) => ({ reason, count }));
}

function kneeOf(grid: Grid, knee: KneeFit): Knee {
  return {
    timeS: grid.startS + knee.timeS,
    tempC: knee.tempC,
    interval: { lowC: knee.lowC, highC: knee.highC, fromS: grid.startS + knee.fromS, toS: grid.startS + knee.toS },
    sharpness: knee.sharpness,
  };
}

/** The fitted line with few enough points for a drawing, the knee itself among them. */
function lineOf(grid: Grid, { window, curve, timeS, tempC }: KneeFit): FittedLine {
  const every = Math.max(1, Math.ceil((window.to - window.from) / MOST_POINTS));
  const points = [{ timeS: grid.startS + timeS, tempC }];
  for (let index = window.from; index <= window.to; index += every)
    points.push({ timeS: grid.startS + (grid.timeS[index] ?? 0), tempC: curve(index) });
  return { against: grid.heatFrom, points: points.sort((left, right) => left.timeS - right.timeS) };
}
