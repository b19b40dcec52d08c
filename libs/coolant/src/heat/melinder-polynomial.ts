import { type Coefficients, type MelinderFluid } from '../data/melinder.ts';

/**
 * One of Melinder's polynomials in temperature and mass fraction.
 *
 * @param fluid The glycol's constants
 * @param coefficients The property's coefficients
 * @param at Temperature in °C and mass fraction of glycol (0 to 0.6)
 * @returns The property in the unit of its coefficients
 */
export function melinderPolynomial(
  fluid: MelinderFluid,
  coefficients: Coefficients,
  at: { readonly tempC: number; readonly massFraction: number },
): number {
  const t = at.tempC + 273.15 - fluid.baseK;
  const x = at.massFraction - fluid.baseMassFraction;
  return coefficients.reduceRight((sum, row) => sum * t + row.reduceRight((inner, c) => inner * x + c, 0), 0);
}
