import { sayDuration, sayTemp } from '../words/say.ts';
import { frozenReading } from './frozen-reading.ts';
import { type Findings, type Opinion } from './findings.ts';

const BROKEN_WIRE_SHARE = 0.02;
const GLITCH_SHARE = 0.03;
const STEP_K = 12;
const JITTER_K = 3;
const JITTER_SHARE = 0.03;
const NEIGHBOURS_WITHIN_S = 12;
/** Coolant can't start colder than the air around it by more than two sensors disagree. */
const COLDER_THAN_AIR_K = 10;

/** Reasons to look at sensor, plug and logger before the thermostat; null when the readings hang together. */
export function dataDoubts(findings: Findings): Opinion | null {
  const { log, deglitched, readings } = findings;
  if (log.endOfRange > BROKEN_WIRE_SHARE * readings) {
    const share = Math.round((100 * log.endOfRange) / readings);
    return doubt(
      0.9,
      `${share} % of the readings sit at the end of the sensor's range (−40 or 215 °C): a broken or shorted sensor wire looks like that.`,
    );
  }
  if (deglitched.largestStepK >= STEP_K) {
    return doubt(0.85, `The reading jumps by ${deglitched.largestStepK.toFixed(0)} °C at once and stays there; no coolant does that.`);
  }
  if (deglitched.glitches > GLITCH_SHARE * readings) {
    return doubt(
      0.8,
      `${deglitched.glitches} of ${readings} readings jump away from the curve and back: a loose plug or a poor connection.`,
    );
  }
  const jitter = jitterShare(findings);
  if (jitter > JITTER_SHARE) {
    return doubt(
      0.8,
      `${Math.round(100 * jitter)} % of the readings differ by more than ${JITTER_K} °C from both neighbours: a loose plug or a poor connection.`,
    );
  }
  const frozen = frozenReading(findings);
  if (frozen) {
    return doubt(
      0.65,
      `The reading stands at exactly ${sayTemp(frozen.tempC, 1)} for ${sayDuration(frozen.lastsS)} while the engine works: a frozen value rather than a level.`,
    );
  }
  return colderThanAir(findings);
}

function doubt(confidence: number, reason: string): Opinion {
  return { verdict: 'doubtful-data', confidence, reasons: [reason] };
}

function jitterShare({ deglitched: { log } }: Findings): number {
  let odd = 0;
  let looked = 0;
  for (let index = 1; index + 1 < log.count; index += 1) {
    if ((log.timeS[index + 1] ?? 0) - (log.timeS[index - 1] ?? 0) > NEIGHBOURS_WITHIN_S) continue;
    looked += 1;
    const here = log.coolantC[index] ?? 0;
    const before = here - (log.coolantC[index - 1] ?? 0);
    const after = here - (log.coolantC[index + 1] ?? 0);
    if (before * after > 0 && Math.min(Math.abs(before), Math.abs(after)) > JITTER_K) odd += 1;
  }
  return looked > 0 ? odd / looked : 0;
}

function colderThanAir({ start, grid, air }: Findings): Opinion | null {
  const { aboveAirK, startC } = start;
  if (aboveAirK === null || aboveAirK > -COLDER_THAN_AIR_K || air.sensorsDisagree) return null;
  const both = grid.intakeC !== null && grid.ambientC !== null && startC < (grid.ambientC[0] ?? 0) - COLDER_THAN_AIR_K;
  return doubt(
    both ? 0.8 : 0.6,
    `At the start the coolant reads ${Math.round(-aboveAirK)} °C colder than the air: coolant can't be colder than what surrounds it, so check the sensor first (or the car came from the cold into the workshop).`,
  );
}
