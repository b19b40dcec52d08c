import { type CleanLog } from '../clean/clean-log.ts';
import { quantile } from '../grid/quantile.ts';

/** Coolant and intake air agree to this in an engine that stood overnight (second-hand, from service literature). */
const COLD_START_K = 6;
const FIRST_S = 15;
const NEVER_COLD_ABOVE_C = 55;

export interface Start {
  startC: number;
  /** Coolant minus intake (or ambient) at the start; null where neither was logged. */
  aboveAirK: number | null;
  coldStart: boolean | null;
}

/**
 * Reads the first seconds: was the engine cold? The intake sensor's first answer is sometimes wrong, so the middle of the first readings
 * counts. Without an air temperature only a clearly hot engine can be told.
 */
export function coldStart(log: CleanLog): Start {
  const untilS = (log.timeS[0] ?? 0) + FIRST_S;
  const coolant: number[] = [];
  const intake: number[] = [];
  const ambient: number[] = [];
  for (let index = 0; index < log.count && ((log.timeS[index] ?? 0) <= untilS || coolant.length < 3); index += 1) {
    coolant.push(log.coolantC[index] ?? 0);
    if (!Number.isNaN(log.intakeC[index] ?? Number.NaN)) intake.push(log.intakeC[index] ?? 0);
    if (!Number.isNaN(log.ambientC[index] ?? Number.NaN)) ambient.push(log.ambientC[index] ?? 0);
  }
  const startC = quantile(coolant, 0.5);
  const air = intake.length > 0 ? intake : ambient;
  if (startC > NEVER_COLD_ABOVE_C) return { startC, aboveAirK: air.length ? startC - quantile(air, 0.5) : null, coldStart: false };
  if (air.length === 0) return { startC, aboveAirK: null, coldStart: null };
  const aboveAirK = startC - quantile(air, 0.5);
  return { startC, aboveAirK, coldStart: Math.abs(aboveAirK) <= COLD_START_K };
}
