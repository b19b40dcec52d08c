import { formatVolume } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { refuse, type Outcome } from '../outcome.ts';

export interface RefillSpaceInput {
  readonly systemVolumeL: number;
  /** Below the cold mark on arrival, L. */
  readonly missingOnArrivalL: number;
  readonly drainedL: number;
}

/**
 * The space to fill and what stays in: what was missing on arrival counts as much as what was drained.
 *
 * @param input Volumes in L
 * @returns Space (missing + drained) and residual (system − missing − drained); refused where they exceed the system
 * @example refillSpace({ systemVolumeL: 7, missingOnArrivalL: 1, drainedL: 3 }) // spaceL 4, residualL 3
 */
export function refillSpace(input: RefillSpaceInput): Outcome<{ readonly spaceL: number; readonly residualL: number }> {
  const { systemVolumeL, missingOnArrivalL, drainedL } = input;
  const problem =
    checkNumber(systemVolumeL, { field: 'systemVolumeL', name: 'The system volume', unit: 'L', least: 0.1, most: 500 }) ??
    checkNumber(missingOnArrivalL, { field: 'missingOnArrivalL', name: 'What was missing on arrival', unit: 'L', least: 0 }) ??
    checkNumber(drainedL, { field: 'drainedL', name: 'The drained volume', unit: 'L', least: 0 });
  if (problem) return refuse(problem);
  const spaceL = missingOnArrivalL + drainedL;
  if (spaceL <= systemVolumeL) return { ok: true, spaceL, residualL: systemVolumeL - spaceL };
  return refuse({
    code: 'more-than-system',
    kind: 'impossible',
    field: 'drainedL',
    limit: systemVolumeL - missingOnArrivalL,
    message:
      `${formatVolume(missingOnArrivalL, { unit: 'L' })} missing and ${formatVolume(drainedL, { unit: 'L' })} drained are more than the ` +
      `${formatVolume(systemVolumeL, { unit: 'L' })} the system holds. Check the capacity and both figures.`,
  });
}
