import { type Findings } from './findings.ts';

const LONGEST_EQUAL_S = 480;
const CLIMBING_C_PER_MIN = 1.5;
const CLIMB_OVER_S = 120;
const SAME_K = 0.001;
/** A thermostat, even one that opens early, may hold its level that evenly; a value standing still far below cannot come from one. */
const BELOW_NOMINAL_K = 27;
const BELOW_ANY_C = 58;

/** A value that stops dead in the middle of the climb and never moves again while the engine is running. */
export function frozenReading({ grid, deglitched: { log }, nominalC, heat }: Findings): { tempC: number; lastsS: number } | null {
  const last = log.count - 1;
  const tempC = log.coolantC[last] ?? 0;
  if (tempC > Math.max(BELOW_ANY_C, (nominalC ?? 0) - BELOW_NOMINAL_K)) return null;
  let first = last;
  while (first > 0 && Math.abs((log.coolantC[first - 1] ?? 0) - tempC) < SAME_K) first -= 1;
  const lastsS = (log.timeS[last] ?? 0) - (log.timeS[first] ?? 0);
  if (lastsS < LONGEST_EQUAL_S) return null;
  const at = Math.floor(((log.timeS[first] ?? 0) - grid.startS) / grid.stepS);
  const earlier = Math.max(0, at - Math.round(CLIMB_OVER_S / grid.stepS));
  const climb = at > earlier ? ((grid.smoothC[at] ?? 0) - (grid.smoothC[earlier] ?? 0)) / (((at - earlier) * grid.stepS) / 60) : 0;
  const neverMoved = first === 0 && (heat.drivingMinutes ?? 0) > LONGEST_EQUAL_S / 60;
  return Math.abs(climb) >= CLIMBING_C_PER_MIN || neverMoved ? { tempC, lastsS } : null;
}
