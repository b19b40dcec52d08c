import { MELINDER } from '../data/melinder.ts';
import { WATER_KG_PER_L } from '../data/pure-density.ts';
import { type Glycol } from '../glycol.ts';
import { melinderPolynomial } from './melinder-polynomial.ts';

function melinderKgPerL(glycol: Glycol, at: { tempC: number; massFraction: number }): number {
  return melinderPolynomial(MELINDER[glycol], MELINDER[glycol].densityKgPerM3, at) / 1000;
}

/** The polynomial's own water is up to 0.1 % light; scaled, so that water at 20 °C weighs what water weighs. */
const SCALE: Readonly<Record<Glycol, number>> = {
  ethylene: WATER_KG_PER_L / melinderKgPerL('ethylene', { tempC: 20, massFraction: 0 }),
  propylene: WATER_KG_PER_L / melinderKgPerL('propylene', { tempC: 20, massFraction: 0 }),
};

/**
 * Density of a glycol-water mixture.
 *
 * @param glycol Which glycol
 * @param at Temperature in °C (freezing point to 100) and mass fraction of glycol (0 to 0.6)
 * @returns Density in kg/L; scaled to 0.9982 for water at 20 °C
 * @example densityKgPerL('ethylene', { tempC: 20, massFraction: 0.5 }) // 1.0658
 */
export function densityKgPerL(glycol: Glycol, at: { readonly tempC: number; readonly massFraction: number }): number {
  return melinderKgPerL(glycol, at) * SCALE[glycol];
}
