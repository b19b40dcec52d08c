import { GLYCOL_ANTOINE, MOLAR_MASS } from '../data/antoine.ts';
import { type Glycol } from '../glycol.ts';
import { bisect } from '../numeric/bisect.ts';
import { SATURATION_LIMITS, saturationK, saturationMPa } from './saturation.ts';

function glycolKPa(glycol: Glycol, tempK: number): number {
  const { a, b, c } = GLYCOL_ANTOINE[glycol];
  return 100 * 10 ** (a - b / (tempK + c));
}

function waterMoleFraction(glycol: Glycol, massFraction: number): number {
  const water = (1 - massFraction) / MOLAR_MASS.water;
  return water / (water + massFraction / MOLAR_MASS[glycol]);
}

/**
 * Where a glycol-water mixture boils.
 *
 * Raoult's law with both vapours: x_w·p_water(T) + (1 − x_w)·p_glycol(T) = p, in mole fractions. It boils above water
 * at the same pressure and below the water that alone would have to make up the pressure: those two bracket it.
 *
 * @param glycol Which glycol
 * @param massFraction Mass fraction of glycol, 0 to 0.99
 * @param pressure Absolute pressure in kPa, 1 to 1000
 * @returns Boiling point in °C
 * @example mixtureBoilingPointC('ethylene', 0, { absoluteKPa: 101.325 }) // 99.974
 */
export function mixtureBoilingPointC(glycol: Glycol, massFraction: number, pressure: { readonly absoluteKPa: number }): number {
  const { absoluteKPa } = pressure;
  const waterShare = waterMoleFraction(glycol, massFraction);
  const vapourKPa = (tempK: number): number => waterShare * saturationMPa(tempK) * 1000 + (1 - waterShare) * glycolKPa(glycol, tempK);
  const low = saturationK(absoluteKPa / 1000);
  const high = saturationK(Math.min(absoluteKPa / 1000 / waterShare, SATURATION_LIMITS.mostMPa));
  return bisect(vapourKPa, absoluteKPa, { low, high }) - 273.15;
}
