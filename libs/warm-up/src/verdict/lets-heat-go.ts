import { type Grid } from '../grid/grid.ts';
import { slowHealthyCurve } from '../model/slow-healthy-curve.ts';
import { sayDuration, sayTemp } from '../words/say.ts';
import { type Findings, type Opinion } from './findings.ts';
import { mayHoldLower } from './may-hold-lower.ts';
import { warmedUpC } from './warmed-up.ts';

/** Colder than a slow but sound engine by this much counts; half of it for the weakest imaginable one. */
const COLDER_K = 8;
const COLDER_THAN_WEAKEST_K = 4;
const LEAST_S = 420;
const LEAST_MEAN_KMH = 20;
const MOST_STATIONARY = 0.6;
const STANDING_KMH = 3;
const LAST_S = 600;
/** Commanded and twin valves may hold a level this much lower by design. */
const MEANT_LOWER_K = 15;
const HALF_WAY_K = 5;
/** Heat lost per second and degree: block and heater together stay below the first; on the road an open radiator loses more. */
const OPEN_LOSS_PER_S = 0.0024;
const OPEN_LOSS_IF_FALLING_PER_S = 0.0018;
const LOSS_NEEDS_S = 600;
/** Pace at speed less pace at standstill: in a closed engine driving warms more, always. */
const ROAD_COOLS_C_PER_MIN = 0.35;
const MUCH_COLDER_K = 15;
/** As long as a heater on full could explain it. */
const UNSURE = 0.75;
/** Loss of an open radiator: still air and per km/h, of the size used in the published lumped models (chosen). */
const RADIATOR = { still: 0.0007, perKmh: 0.00003 } as const;
/** Settled this long and this far below: enough for a suspicion even where a slow engine might be no warmer. */
const SETTLED_AFTER_S = 1200;
const FAR_BELOW_K = 18;
const LEAK_SHARE = 0.65;

/** Stays colder than any sound engine would on this drive: the valve lets heat go when it should be shut. */
export function letsHeatGo(findings: Findings): Opinion | null {
  const { grid, air, heat, heater, lossPerS, endC, nominalC, fall, level } = findings;
  if (air.airC === null || heat.meanSpeedKmh === null) return null;
  // A hybrid drives with its engine off; without engine speed nobody knows when it made heat.
  if (findings.kind === 'hybrid' && !grid.rpm) return null;
  if (grid.durationS < LEAST_S || !drives(grid) || endC >= warmedUpC(nominalC) - (mayHoldLower(findings) ? MEANT_LOWER_K : 0)) return null;
  // A clear knee at the right place: the valve was shut below it and works, whatever cooled the engine later.
  if (findings.knee && findings.knee.tempC >= warmedUpC(nominalC) + HALF_WAY_K) return null;
  const last = grid.size - 1;
  const most = nominalC ?? 80;
  const slowC = Math.min(most, slowHealthyCurve(grid, { airC: air.airC, heater, engine: 'slow' })[last] ?? 0);
  const weakestC = Math.min(most, slowHealthyCurve(grid, { airC: air.airC, heater, engine: 'weakest' })[last] ?? 0);
  const belowWeakest = endC <= weakestC - COLDER_THAN_WEAKEST_K;
  const roadCools = fall !== null && fall.fastCPerMin - fall.slowCPerMin <= ROAD_COOLS_C_PER_MIN;
  const loss = lossPerS !== null && grid.durationS >= LOSS_NEEDS_S ? lossPerS : 0;
  const loses = loss >= OPEN_LOSS_PER_S || (roadCools && loss >= OPEN_LOSS_IF_FALLING_PER_S);
  const colder = endC <= slowC - COLDER_K && (belowWeakest || loses);
  const settlesCool =
    roadCools && loss >= OPEN_LOSS_IF_FALLING_PER_S && level !== null && grid.durationS >= SETTLED_AFTER_S && endC < most - FAR_BELOW_K;
  if (!colder && !settlesCool) return null;
  const reasons = [
    `After ${sayDuration(grid.durationS)} at ${Math.round(heat.meanSpeedKmh)} km/h on average the coolant is at ${sayTemp(endC)}` +
      (colder ? `; even a slow engine with a closed thermostat would be at ${sayTemp(slowC)} by then.` : ' and has settled there.'),
  ];
  if (belowWeakest) reasons.push(`A heater on full all the way does not explain it: that would still give ${sayTemp(weakestC)}.`);
  if (loses) reasons.push('It loses heat as fast as with an open radiator.');
  if (roadCools) reasons.push('Driving does not warm it more than standing does, as with an open radiator.');
  reasons.push('Look alike: a fan that never stops, a sensor that reads low, low coolant.');
  const open = RADIATOR.still + RADIATOR.perKmh * heat.meanSpeedKmh;
  if (!roadCools && loss < LEAK_SHARE * open) return { verdict: 'leaks', confidence: belowWeakest ? 0.65 : 0.55, reasons };
  if (!colder) return { verdict: 'stuck-open', confidence: 0.55, reasons };
  const confidence =
    0.6 + (belowWeakest ? 0.22 : 0) + (loses ? 0.06 : 0) + (roadCools ? 0.06 : 0) + (endC <= slowC - MUCH_COLDER_K ? 0.04 : 0);
  return { verdict: 'stuck-open', confidence: Math.min(belowWeakest ? 0.95 : UNSURE, confidence), reasons };
}

/** Whether the car was on the move over the whole log and over its last ten minutes: an engine that idles makes too little heat to judge. */
function drives({ speedKmh, size, stepS }: Grid): boolean {
  if (!speedKmh) return false;
  return [0, Math.max(0, size - Math.round(LAST_S / stepS))].every((from) => {
    const speeds = speedKmh.subarray(from);
    const mean = speeds.reduce((sum, speed) => sum + speed, 0) / speeds.length;
    const standing = speeds.filter((speed) => speed < STANDING_KMH).length / speeds.length;
    return mean >= LEAST_MEAN_KMH && standing <= MOST_STATIONARY;
  });
}
