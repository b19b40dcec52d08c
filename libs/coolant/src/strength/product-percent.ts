import { WATER_KG_PER_L } from '../data/pure-density.ts';
import { type Additive } from './additive.ts';

/**
 * How the trade says it: volume % of product ("50/50" is half concentrate), measured apart.
 *
 * @param massPercent Mass % of pure glycol in the mixture
 * @param additive The product
 * @returns Volume % of product; null for a ready-mixed product, which is no concentrate, and for a mixture stronger than it
 * @example productPercent(48.93, concentrateOf93MassPercent) // 50
 */
export function productPercent(massPercent: number, additive: Additive): number | null {
  if (additive.isReadyMixed || massPercent > additive.massPercent) return null;
  const productKg = massPercent / additive.massPercent;
  const productL = productKg / additive.densityKgPerL;
  const waterL = (1 - productKg) / WATER_KG_PER_L;
  return (100 * productL) / (productL + waterL);
}
