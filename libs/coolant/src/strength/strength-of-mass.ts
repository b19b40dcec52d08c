import { type Glycol } from '../glycol.ts';
import { FREEZING_CURVE } from './freezing-curve.ts';
import { type Strength } from './strength.ts';

/**
 * Strength of a mixture that was computed, from its mass %. Above the table's end the end is credited and said.
 *
 * @param glycol Which glycol
 * @param massPercent Mass % of pure glycol, 0 or more
 * @example strengthOfMass('ethylene', 50).freezingPointC // -33.8
 */
export function strengthOfMass(glycol: Glycol, massPercent: number): Strength {
  const curve = FREEZING_CURVE[glycol];
  const isAtLeast = massPercent > curve.endMassPercent + 1e-9;
  const credited = Math.min(massPercent, curve.endMassPercent);
  const volumePercent = curve.volumePercentOfMass(credited);
  return { volumePercent, massPercent: isAtLeast ? null : credited, freezingPointC: curve.freezingPointC(volumePercent), isAtLeast };
}
