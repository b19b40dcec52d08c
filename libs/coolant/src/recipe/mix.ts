import { WATER_KG_PER_L } from '../data/pure-density.ts';
import { type Glycol } from '../glycol.ts';
import { densityAt20 } from '../strength/density-at-20.ts';
import { type Additive } from '../strength/additive.ts';

/** What stays in the system, at 20 °C. */
export interface Residual {
  readonly volumeL: number;
  readonly massFraction: number;
}

/**
 * What comes of pouring so much additive and water onto what stays in: the other way round from a recipe.
 *
 * @param glycol Which glycol
 * @param residual What stays in
 * @param poured Additive and water, measured apart at 20 °C
 * @returns Mass fraction and volume of the mixture; mass is conserved, the volume is smaller than the sum
 * @example mix('ethylene', { volumeL: 0, massFraction: 0 }, { additive: pure, additiveL: 1, waterL: 1 }) // massFraction 0.527
 */
export function mix(
  glycol: Glycol,
  residual: Residual,
  poured: { readonly additive: Additive; readonly additiveL: number; readonly waterL: number },
): { readonly massFraction: number; readonly volumeL: number } {
  const residualKg = residual.volumeL * densityAt20(glycol, residual.massFraction);
  const additiveKg = poured.additiveL * poured.additive.densityKgPerL;
  const totalKg = residualKg + additiveKg + poured.waterL * WATER_KG_PER_L;
  if (totalKg === 0) return { massFraction: 0, volumeL: 0 };
  const massFraction = (residualKg * residual.massFraction + (additiveKg * poured.additive.massPercent) / 100) / totalKg;
  return { massFraction, volumeL: totalKg / densityAt20(glycol, massFraction) };
}
