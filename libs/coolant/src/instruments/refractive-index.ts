import { PROPYLENE_INDEX } from '../data/propylene-index.ts';
import { type Glycol } from '../glycol.ts';
import { bisect } from '../numeric/bisect.ts';
import { linearTable } from '../numeric/linear-table.ts';

/** The fits hold up to this mass fraction of glycol. */
const MOST_MASS_FRACTION = 0.6;

/** Index of water at 20 °C, where both scales begin. */
const WATER_INDEX = 1.333003;

/** Fit to the CRC Handbook's table, 102nd edition, to 0.00006. */
function ethyleneIndex(w: number): number {
  return WATER_INDEX + w * (0.091833 + w * (0.029949 - w * 0.026601));
}

const propyleneIndex = linearTable(
  PROPYLENE_INDEX.map((row) => row.massPercent / 100),
  PROPYLENE_INDEX.map((row) => row.refractiveIndex),
);

const INDEX_OF: Readonly<Record<Glycol, (massFraction: number) => number>> = { ethylene: ethyleneIndex, propylene: propyleneIndex };

/**
 * Refractive index of a mixture at 20 °C (sodium light).
 *
 * @param glycol Which glycol; propylene is an estimate
 * @param massFraction Mass fraction of glycol, 0 to 0.6
 * @example refractiveIndex('ethylene', 0.4) // 1.3728
 */
export function refractiveIndex(glycol: Glycol, massFraction: number): number {
  return INDEX_OF[glycol](massFraction);
}

/**
 * Mass fraction of glycol from the refractive index at 20 °C.
 *
 * @param glycol Which glycol; propylene is an estimate
 * @param index Refractive index
 * @returns Mass fraction, or the end of the scale that the index lies beyond
 * @example massFractionOfIndex('ethylene', 1.3728) // 0.4
 */
export function massFractionOfIndex(glycol: Glycol, index: number): number | 'below-water' | 'beyond-scale' {
  if (index < WATER_INDEX - 0.0005) return 'below-water';
  if (index > refractiveIndex(glycol, MOST_MASS_FRACTION) + 1e-9) return 'beyond-scale';
  return bisect(INDEX_OF[glycol], index, { low: 0, high: MOST_MASS_FRACTION });
}

/**
 * Refractive index of the strongest mixture that can be told, 60 mass %.
 *
 * @param glycol Which glycol
 * @example strongestIndex('ethylene') // 1.3931
 */
export function strongestIndex(glycol: Glycol): number {
  return refractiveIndex(glycol, MOST_MASS_FRACTION);
}
