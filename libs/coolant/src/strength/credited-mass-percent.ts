import { type Glycol } from '../glycol.ts';
import { FREEZING_CURVE } from './freezing-curve.ts';
import { type Strength } from './strength.ts';

/**
 * The mass % to compute with: the mixture's own, or the table's end where it is stronger than that. Never more than is
 * published.
 *
 * @param glycol Which glycol
 * @param strength The mixture
 * @example creditedMassPercent('ethylene', { volumePercent: 59, massPercent: null, freezingPointC: -48.3, isAtLeast: true }) // 60
 */
export function creditedMassPercent(glycol: Glycol, strength: Strength): number {
  return strength.massPercent ?? FREEZING_CURVE[glycol].endMassPercent;
}
