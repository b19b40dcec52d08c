import { type CleanLog } from './clean-log.ts';

/** An engine full of coolant can't change faster than this; a reading that does is the sensor's or the logger's. */
const SUDDEN_K = 6;
const SUDDEN_K_PER_S = 0.7;
/** Back on the curve means nearer: no more than a quick warm-up makes in that time. */
const BACK_K_PER_S = 0.25;
const LONGEST_GLITCH_S = 45;

export interface Deglitched {
  log: CleanLog;
  /** Readings taken out because the curve jumped away and came back. */
  glitches: number;
  /** Largest jump that never came back: the curve goes on at another level. */
  largestStepK: number;
}

/**
 * Takes out short jumps away from the curve and back (codes such as 127 or 0 for 'no answer', a loose plug), and counts the jumps that
 * stay, which no coolant can make.
 */
export function dropGlitches(log: CleanLog): Deglitched {
  const keep = new Uint8Array(log.count);
  let kept = 0;
  let last = -1;
  let glitches = 0;
  let largestStepK = 0;
  for (let index = 0; index < log.count; index += 1) {
    if (last >= 0 && isSudden(log, { from: last, to: index, kPerS: SUDDEN_K_PER_S })) {
      const back = comesBack(log, last, index);
      if (back > 0) {
        glitches += back - index;
        index = back;
      } else {
        largestStepK = Math.max(largestStepK, Math.abs((log.coolantC[index] ?? 0) - (log.coolantC[last] ?? 0)));
      }
    }
    keep[index] = 1;
    kept += 1;
    last = index;
  }
  if (glitches === 0) return { log, glitches, largestStepK };
  return {
    log: { ...only(log, keep, kept), dropped: [...log.dropped, { reason: 'glitch', count: glitches }] },
    glitches,
    largestStepK,
  };
}

function isSudden(log: CleanLog, { from, to, kPerS }: { from: number; to: number; kPerS: number }): boolean {
  const seconds = (log.timeS[to] ?? 0) - (log.timeS[from] ?? 0);
  return Math.abs((log.coolantC[to] ?? 0) - (log.coolantC[from] ?? 0)) > SUDDEN_K + kPerS * seconds;
}

/** Index of the first reading that fits the curve before the jump again, or 0 if none comes soon. */
function comesBack(log: CleanLog, last: number, from: number): number {
  const untilS = (log.timeS[from] ?? 0) + LONGEST_GLITCH_S;
  for (let next = from + 1; next < log.count; next += 1) {
    if (!isSudden(log, { from: last, to: next, kPerS: BACK_K_PER_S })) return next;
    if ((log.timeS[next] ?? 0) > untilS && next > from + 2) return 0;
  }
  return 0;
}

function only(log: CleanLog, keep: Uint8Array, count: number): CleanLog {
  const pick = (column: Float64Array): Float64Array => column.subarray(0, log.count).filter((_, index) => keep[index] === 1);
  return {
    ...log,
    timeS: pick(log.timeS),
    coolantC: pick(log.coolantC),
    speedKmh: pick(log.speedKmh),
    rpm: pick(log.rpm),
    loadPercent: pick(log.loadPercent),
    intakeC: pick(log.intakeC),
    ambientC: pick(log.ambientC),
    airFlowGps: pick(log.airFlowGps),
    count,
  };
}
