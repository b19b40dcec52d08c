import type { Random } from './random.ts';

/** What the thermostat of an invented car does on its drive. */
export interface DriveFacts {
  fault: 'none' | 'stuck-open' | 'opens-early';
  nominalC: number;
  airC: number;
  minutes: number;
}

const STEP_S = 0.5;
/** Invented: kJ/K, kW/K, kW. The same lumped engine, radiator and wax for every car. */
const ENGINE_KJK = 60;
const RADIATOR_KJK = 10;
const BLOCK_TO_AIR = 0.018;
const WAX_LAG_S = 12;
const FULL_LIFT_K = 12;
const EARLY_K = 15;

/** Out of the yard, through the town, a stretch of main road, back through the town. */
function speedAt(timeS: number, totalS: number, wave: number): number {
  const share = timeS / totalS;
  if (timeS < 45) return 0;
  if (share > 0.35 && share < 0.8) return 72 + 9 * Math.sin(timeS / 70 + wave);
  const stop = Math.sin(timeS / 38 + wave);
  return stop < -0.55 ? 0 : Math.max(0, 34 + 14 * stop);
}

const HEADER =
  'Time (s),Engine Coolant Temperature (°C),Vehicle Speed (km/h),Engine RPM,Engine Load (%),Intake Air Temperature (°C),Ambient Air Temperature (°C)';

/** A made-up log as a tester's file: a reading a second, in whole degrees as most testers give it. */
export function driveWarmUp(random: Random, { fault, nominalC, airC, minutes }: DriveFacts): string {
  const totalS = minutes * 60;
  const wave = random.between(0, 60) / 10;
  const opensC = fault === 'opens-early' ? nominalC - EARLY_K : nominalC;
  const leastLift = fault === 'stuck-open' ? 0.8 : 0.01;
  let [engineC, radiatorC, waxC] = [airC, airC, airC];
  const rows = [HEADER];
  for (let timeS = 0; timeS < totalS; timeS += STEP_S) {
    const speedKmh = speedAt(timeS, totalS, wave);
    const heatKW = speedKmh === 0 ? 3.6 : 8.5 * (0.55 + speedKmh / 140);
    const lift = Math.max(leastLift, Math.min(1, (waxC - opensC) / FULL_LIFT_K));
    const flowKWK = (speedKmh === 0 ? 0.7 : 2.2) * lift;
    const toRadiator = flowKWK * (engineC - radiatorC);
    engineC += (STEP_S * (heatKW - BLOCK_TO_AIR * (engineC - airC) - toRadiator)) / ENGINE_KJK;
    radiatorC += (STEP_S * (toRadiator - (0.03 + 0.0022 * speedKmh) * (radiatorC - airC))) / RADIATOR_KJK;
    waxC += (STEP_S * (engineC - waxC)) / WAX_LAG_S;
    if (timeS % 1 !== 0) continue;
    const isStanding = speedKmh === 0;
    rows.push(
      [
        timeS,
        Math.round(engineC),
        Math.round(speedKmh),
        isStanding ? 810 : Math.round(1300 + speedKmh * 12),
        Math.round(isStanding ? 22 : 30 + speedKmh / 3),
        Math.round(airC + 4),
        Math.round(airC),
      ].join(','),
    );
  }
  return rows.join('\n');
}
