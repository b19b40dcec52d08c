import { type CleanLog } from '../clean/clean-log.ts';
import { evenSteps } from './even-steps.ts';
import { type Grid } from './grid.ts';
import { heatInput } from './heat-input.ts';
import { medianStepS } from './median-step.ts';
import { smooth } from './smooth.ts';

const STEP_S = 5;
const MOST_STEPS = 1200;
const FEWEST_STEPS = 6;
const FEWEST_READINGS = 4;
/** Below this the engine does not turn by itself. */
const STANDING_RPM = 150;
const SMOOTHED_S = 25;
/** A gap is this long, and this many usual steps. */
const SHORTEST_GAP_S = 20;
const GAP_STEPS = 6;

/** Lays a cleaned log on even steps of 5 s (more for very long logs); null when there are too few readings for any curve. */
export function toGrid(log: CleanLog): Grid | null {
  const { count, timeS } = log;
  if (count < FEWEST_READINGS) return null;
  const medianIntervalS = medianStepS((index) => timeS[index] ?? 0, count);
  const startS = timeS[0] ?? 0;
  const durationS = (timeS[count - 1] ?? 0) - startS;
  const stepS = Math.max(STEP_S, durationS / MOST_STEPS);
  const size = Math.floor(durationS / stepS);
  if (size < FEWEST_STEPS) return null;
  // Readings sit at the start of their interval: half an interval earlier makes each step's readings average to its middle.
  const firstS = startS + stepS / 2 - Math.min(medianIntervalS, stepS) / 2;
  const room = { times: new Float64Array(count), readings: new Float64Array(count) };
  const channel = (values: Float64Array): Float64Array | null => evenSteps({ timeS, values, count, firstS, stepS, size, room });
  const coolantC = channel(log.coolantC);
  if (!coolantC) return null;
  const rpm = channel(log.rpm);
  const speedKmh = channel(log.speedKmh);
  return {
    stepS,
    size,
    startS,
    timeS: Float64Array.from({ length: size }, (_, index) => firstS - startS + index * stepS),
    coolantC,
    smoothC: smooth(coolantC, Math.max(1, Math.round(SMOOTHED_S / 2 / stepS))),
    speedKmh,
    rpm,
    intakeC: channel(log.intakeC),
    ambientC: channel(log.ambientC),
    running: Float64Array.from({ length: size }, (_, index) => (rpm && (rpm[index] ?? 0) < STANDING_RPM ? 0 : 1)),
    durationS,
    medianIntervalS,
    ...heatInput({ airFlowGps: channel(log.airFlowGps), loadPercent: channel(log.loadPercent), rpm, speedKmh, size }),
    ...gaps(log, { medianIntervalS, firstS, stepS, size }),
  };
}

interface Spacing {
  medianIntervalS: number;
  firstS: number;
  stepS: number;
  size: number;
}

function gaps({ timeS, count }: CleanLog, { medianIntervalS, firstS, stepS, size }: Spacing): Pick<Grid, 'bridged' | 'longestGapS'> {
  const gapS = Math.max(SHORTEST_GAP_S, GAP_STEPS * medianIntervalS);
  const bridged = new Uint8Array(size);
  let longestGapS = 0;
  for (let index = 1; index < count; index += 1) {
    const beforeS = timeS[index - 1] ?? 0;
    const nowS = timeS[index] ?? 0;
    longestGapS = Math.max(longestGapS, nowS - beforeS);
    if (nowS - beforeS <= gapS) continue;
    const from = Math.ceil((beforeS - firstS) / stepS);
    const to = Math.floor((nowS - firstS) / stepS);
    bridged.fill(1, Math.max(0, from), Math.max(0, Math.min(size, to + 1)));
  }
  return { bridged, longestGapS };
}
