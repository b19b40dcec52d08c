import { MELINDER } from '../data/melinder.ts';
import { type Glycol } from '../glycol.ts';
import { densityKgPerL } from './density.ts';
import { melinderPolynomial } from './melinder-polynomial.ts';

export interface MixtureProperties {
  readonly densityKgPerL: number;
  readonly heatCapacityKJPerKgK: number;
  readonly conductivityWPerMK: number;
  readonly viscosityMPaS: number;
}

/**
 * Density, heat capacity, conductivity and viscosity of a mixture.
 *
 * Source: Melinder, IIR 2010, by CoolProp's coefficients.
 *
 * @param glycol Which glycol
 * @param at Temperature in °C (freezing point to 100) and mass fraction of glycol (0 to 0.6)
 * @example mixtureProperties('ethylene', { tempC: 80, massFraction: 0.5 }).heatCapacityKJPerKgK // 3.58
 */
export function mixtureProperties(glycol: Glycol, at: { readonly tempC: number; readonly massFraction: number }): MixtureProperties {
  const fluid = MELINDER[glycol];
  return {
    densityKgPerL: densityKgPerL(glycol, at),
    heatCapacityKJPerKgK: melinderPolynomial(fluid, fluid.heatCapacityJPerKgK, at) / 1000,
    conductivityWPerMK: melinderPolynomial(fluid, fluid.conductivityWPerMK, at),
    viscosityMPaS: Math.exp(melinderPolynomial(fluid, fluid.logViscosityPaS, at)) * 1000,
  };
}
