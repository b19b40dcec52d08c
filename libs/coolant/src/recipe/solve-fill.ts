import { WATER_KG_PER_L } from '../data/pure-density.ts';
import { type Glycol } from '../glycol.ts';
import { bisect } from '../numeric/bisect.ts';
import { densityAt20 } from '../strength/density-at-20.ts';

/** A system with what stays in it, and what is to be reached. Mass fractions are of pure glycol; volumes at 20 °C. */
export interface Fill {
  readonly glycol: Glycol;
  readonly systemL: number;
  /** What stays in: the system less the space to fill. */
  readonly residualL: number;
  readonly residualMassFraction: number;
  readonly additive: { readonly massFraction: number; readonly densityKgPerL: number };
  readonly targetMassFraction: number;
}

export type FillSolution =
  | { readonly kind: 'mixed'; readonly additiveL: number; readonly waterL: number }
  | { readonly kind: 'water-alone'; readonly waterL: number; readonly massFraction: number }
  | { readonly kind: 'drain-more'; readonly requiredDrainL: number }
  | { readonly kind: 'additive-too-weak' };

/** Amounts smaller than this share of the system are arithmetic, not coolant. */
const NOTHING = 1e-9;

function waterAlone(fill: Fill, residualKg: number): FillSolution {
  const { glycol, systemL, residualMassFraction } = fill;
  const glycolKgPerL = (residualKg * residualMassFraction) / systemL;
  const massFraction = bisect((w) => w * densityAt20(glycol, w), glycolKgPerL, { low: 0, high: residualMassFraction });
  const waterL = (systemL * densityAt20(glycol, massFraction) - residualKg) / WATER_KG_PER_L;
  return { kind: 'water-alone', waterL: Math.max(0, waterL), massFraction };
}

function requiredDrain(fill: Fill, totalKg: number): FillSolution {
  const { glycol, systemL, residualMassFraction, additive, targetMassFraction } = fill;
  if (additive.massFraction <= targetMassFraction) {
    const isJustEnough = additive.massFraction === targetMassFraction;
    return isJustEnough ? { kind: 'drain-more', requiredDrainL: systemL } : { kind: 'additive-too-weak' };
  }
  const mayStayKg = (totalKg * (additive.massFraction - targetMassFraction)) / (additive.massFraction - residualMassFraction);
  return { kind: 'drain-more', requiredDrainL: systemL - mayStayKg / densityAt20(glycol, residualMassFraction) };
}

/**
 * How much additive and water bring what stays in a system to the target, the system exactly full.
 *
 * Mass is conserved, for glycol and for the whole: with the full system's mass M = C·ρ(w), what stays R·ρ(w₀) and the
 * additive's mass fraction wₐ, the additive weighs (M·w − R·ρ(w₀)·w₀)/wₐ and water the rest. Volumes are not additive:
 * the two measured apart exceed the space by what they shrink. Where the result would need less than no water, the
 * space is too small; where less than no additive, water alone is enough.
 *
 * @param fill The system; preconditions: 0 ≤ residualL ≤ systemL, fractions 0 to 0.6, additive above 0
 * @example solveFill({ …, systemL: 7, residualL: 0, targetMassFraction: 0.5 }) // { kind: 'mixed', additiveL: 3.35, waterL: 3.74 }
 */
export function solveFill(fill: Fill): FillSolution {
  const { glycol, systemL, residualL, residualMassFraction, additive, targetMassFraction } = fill;
  const totalKg = systemL * densityAt20(glycol, targetMassFraction);
  const residualKg = residualL * densityAt20(glycol, residualMassFraction);
  const additiveKg = (totalKg * targetMassFraction - residualKg * residualMassFraction) / additive.massFraction;
  const waterKg = totalKg - residualKg - additiveKg;
  if (additiveKg < -NOTHING * totalKg) return waterAlone(fill, residualKg);
  if (waterKg < -NOTHING * totalKg) return requiredDrain(fill, totalKg);
  return {
    kind: 'mixed',
    additiveL: Math.max(0, additiveKg) / additive.densityKgPerL,
    waterL: Math.max(0, waterKg) / WATER_KG_PER_L,
  };
}
