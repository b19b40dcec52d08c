import { type Method } from '../template/evidence.ts';

/** Warmer than this, with the instrument's doubt added, nobody opens it alone. Derived from published scald times; the manual rules. */
export const SAFE_TO_OPEN_LIMIT_C = 50;

export interface ColdReading {
  readonly tempC: number;
  /** Expanded uncertainty U (k = 2), K. */
  readonly expandedUncertaintyC: number;
  readonly method: Method;
  readonly onBareMetal: boolean;
  /** What the cap, gauge or hoses say. Anything but a clear 'none' counts as pressure. */
  readonly pressure: 'none' | 'some' | 'unsure';
  readonly hose: 'soft' | 'hard' | 'not-reached';
}

export interface ColdVerdict {
  readonly verdict: 'safe' | 'too-hot' | 'unsure' | 'pressure';
  /** Reading and its full uncertainty added, °C. */
  readonly upperC: number;
  readonly why: string;
}

/**
 * Whether a cooling system may be opened: no pressure, and the reading plus its whole uncertainty at most 50 °C.
 * A safety limit takes the full U, not a share of it. Infrared on bare metal reads low and the engine's own sensor
 * may be the fault or hang in air, so neither can say 'safe'. The vehicle maker's manual may ask for more.
 *
 * @param reading Temperature in °C with its U, how it was taken, and the signs of pressure
 * @returns The verdict and why, in words
 * @example safeToOpen({ tempC: 47.5, expandedUncertaintyC: 2, method: 'contact', onBareMetal: false, pressure: 'none', hose: 'soft' }).verdict // 'safe'
 */
export function safeToOpen(reading: ColdReading): ColdVerdict {
  const upperC = toMillionths(reading.tempC + reading.expandedUncertaintyC);
  const sum = `${figure(reading.tempC)} + ${figure(reading.expandedUncertaintyC)} = ${figure(upperC)}`;
  const answer = (verdict: ColdVerdict['verdict'], why: string): ColdVerdict => ({ verdict, upperC, why });

  if (reading.pressure === 'some') return answer('pressure', 'The system is under pressure: it stays shut until the pressure is gone.');
  if (reading.hose === 'hard') return answer('pressure', 'A hard hose means pressure: the system stays shut until it is soft.');
  if (reading.pressure === 'unsure') return answer('pressure', 'Whether there is pressure is not known: make sure first, it stays shut.');
  if (toMillionths(reading.tempC - reading.expandedUncertaintyC) > SAFE_TO_OPEN_LIMIT_C) {
    return answer('too-hot', `Too hot to open: ${figure(reading.tempC)} °C, the limit is ${SAFE_TO_OPEN_LIMIT_C}. Let it cool.`);
  }
  if (!(upperC <= SAFE_TO_OPEN_LIMIT_C) || reading.expandedUncertaintyC < 0) {
    return answer('unsure', `${sum}, over ${SAFE_TO_OPEN_LIMIT_C}. Use a finer instrument, or wait until it is cooler.`);
  }
  if (reading.method === 'infrared' && reading.onBareMetal) {
    return answer('unsure', 'Infrared reads low on bare metal: measure on rubber or matt tape, or use a contact probe.');
  }
  if (reading.method === 'engine-sensor') {
    return answer('unsure', "The engine's own sensor may be the fault, or hang in air: measure with a probe outside.");
  }
  return answer('safe', `Cold enough: ${sum}, at most ${SAFE_TO_OPEN_LIMIT_C}. No pressure.`);
}

/** 47.9 + 2.1 is 50, whatever binary fractions say. */
function toMillionths(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

function figure(value: number): string {
  return toMillionths(value * 10) % 1 === 0 ? value.toFixed(1) : value.toFixed(2);
}
