import { normalInterval } from '../probability/normal-interval.ts';
import { ROUNDING_SLACK } from './guard-band.ts';

/** A deviation from the nominal figure and what it is judged by, all in one unit. */
export interface JudgedDeviation {
  readonly deviation: number;
  readonly tolerance: number;
  readonly standardUncertainty: number;
  /** Size of the figures, for the rounding slack. */
  readonly scale: number;
}

/**
 * Probability that the true figure lies within ±tolerance when the reading deviates by `deviation` (JCGM 106:2012: a
 * difference of two values of Φ).
 *
 * @example insideProbability({ deviation: 0.03, tolerance: 0.05, standardUncertainty: 0.02, scale: 10 }) // 0.8413…
 */
export function insideProbability({ deviation, tolerance, standardUncertainty, scale }: JudgedDeviation): number {
  const distance = Math.abs(deviation);
  if (standardUncertainty === 0) return distance <= tolerance + ROUNDING_SLACK * scale ? 1 : 0;
  return normalInterval((distance - tolerance) / standardUncertainty, (distance + tolerance) / standardUncertainty);
}
