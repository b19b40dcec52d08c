import { normalInterval } from '../probability/normal-interval.ts';
import { CONFORMANCE_PROBABILITY } from './guard-band.ts';

const HALVINGS = 60;

/**
 * How far from nominal a reading may lie and still prove conformance: the largest deviation whose probability of being
 * inside the limits is 0.95. Close to tolerance − 1.645 u, and exactly consistent with the verdict.
 *
 * @returns half the width of the acceptance interval, or null when not even a reading of the nominal figure proves it
 * @example acceptanceHalfWidth(0.05, 0.02) // 0.01702…
 */
export function acceptanceHalfWidth(tolerance: number, standardUncertainty: number): number | null {
  if (standardUncertainty === 0) return tolerance;
  const probabilityAt = (deviation: number): number =>
    normalInterval((deviation - tolerance) / standardUncertainty, (deviation + tolerance) / standardUncertainty);
  if (probabilityAt(0) < CONFORMANCE_PROBABILITY) return null;
  let inside = 0;
  let outside = tolerance;
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (inside + outside) / 2;
    if (probabilityAt(middle) >= CONFORMANCE_PROBABILITY) inside = middle;
    else outside = middle;
  }
  return inside;
}
