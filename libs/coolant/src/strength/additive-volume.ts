import { PURE_GLYCOL_KG_PER_L, WATER_KG_PER_L } from '../data/pure-density.ts';
import { type Glycol } from '../glycol.ts';
import { FREEZING_CURVE } from './freezing-curve.ts';

/** Mass % of so much glycol and water by unmixed volumes at 20 °C. */
function unmixedMassPercent(glycol: Glycol, volumePercent: number): number {
  const glycolKg = volumePercent * PURE_GLYCOL_KG_PER_L[glycol];
  return (100 * glycolKg) / (glycolKg + (100 - volumePercent) * WATER_KG_PER_L);
}

function unmixedVolumePercent(glycol: Glycol, massPercent: number): number {
  const glycolL = massPercent / PURE_GLYCOL_KG_PER_L[glycol];
  return (100 * glycolL) / (glycolL + (100 - massPercent) / WATER_KG_PER_L);
}

/** Stretches the unmixed rule so that it meets the table's end and pure glycol without a step. */
function stretchOf(glycol: Glycol): { endMassPercent: number; unmixedEnd: number; stretch: number } {
  const { endMassPercent, endVolumePercent } = FREEZING_CURVE[glycol];
  const unmixedEnd = unmixedMassPercent(glycol, endVolumePercent);
  return { endMassPercent, unmixedEnd, stretch: (100 - endMassPercent) / (100 - unmixedEnd) };
}

/**
 * Mass % of an additive from its volume %, from the published column up to the table's end and from unmixed volumes
 * at 20 °C above it.
 *
 * @param glycol Which glycol
 * @param volumePercent Volume % of pure glycol, 0 to 100
 * @example additiveMassPercent('ethylene', 100) // 100
 */
export function additiveMassPercent(glycol: Glycol, volumePercent: number): number {
  const curve = FREEZING_CURVE[glycol];
  if (volumePercent <= curve.endVolumePercent) return curve.massPercentOfVolume(volumePercent);
  const { endMassPercent, unmixedEnd, stretch } = stretchOf(glycol);
  return endMassPercent + (unmixedMassPercent(glycol, volumePercent) - unmixedEnd) * stretch;
}

/**
 * Volume % of an additive from its mass %: the inverse of {@link additiveMassPercent}.
 *
 * @param glycol Which glycol
 * @param massPercent Mass % of pure glycol, 0 to 100
 * @example additiveVolumePercent('ethylene', 100) // 100
 */
export function additiveVolumePercent(glycol: Glycol, massPercent: number): number {
  const curve = FREEZING_CURVE[glycol];
  if (massPercent <= curve.endMassPercent) return curve.volumePercentOfMass(massPercent);
  const { endMassPercent, unmixedEnd, stretch } = stretchOf(glycol);
  return unmixedVolumePercent(glycol, unmixedEnd + (massPercent - endMassPercent) / stretch);
}
