import { WATER_KG_PER_L } from '../data/pure-density.ts';
import { type Glycol } from '../glycol.ts';
import { densityAt20 } from './density-at-20.ts';

/**
 * Mass % of glycol when so many parts of product and water, measured apart at 20 °C, are mixed.
 *
 * @param glycol Which glycol
 * @param productMassPercent Mass % of pure glycol in the product
 * @param parts Parts by volume
 * @example massPercentOfParts('ethylene', 93, { product: 1, water: 1 }) // 48.93
 */
export function massPercentOfParts(
  glycol: Glycol,
  productMassPercent: number,
  parts: { readonly product: number; readonly water: number },
): number {
  const productKg = parts.product * densityAt20(glycol, productMassPercent / 100);
  return (productKg * productMassPercent) / (productKg + parts.water * WATER_KG_PER_L);
}
