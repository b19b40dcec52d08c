import { type AdditiveInput, densityKgPerL, type Glycol, type Outcome, type StrengthInput, toAdditive, toStrength } from '#libs/coolant';

export interface PouredInput {
  readonly glycol: Glycol;
  readonly residualL: number;
  readonly residual: StrengthInput;
  readonly additive: AdditiveInput;
  /** What really went in, measured apart at 20 °C. */
  readonly additiveL: number;
  readonly waterL: number;
}

const AT_20_C = 20;

/**
 * The strength that the amounts really poured give with what stayed in, by mass: what the reading after the run is held against.
 * Kept coolant that went back in belongs to the residual.
 *
 * @returns Mass % of pure glycol
 */
export function pouredStrength(input: PouredInput): Outcome<{ massPercent: number }> {
  const { glycol, residualL, additiveL, waterL } = input;
  const additive = toAdditive(glycol, input.additive);
  if (!additive.ok) return additive;
  const residual = toStrength(glycol, input.residual, { field: 'residual' });
  if (!residual.ok) return residual;
  const share = (residual.strength.massPercent ?? 0) / 100;
  const residualKg = residualL * densityKgPerL(glycol, { tempC: AT_20_C, massFraction: share });
  const additiveKg = additiveL * additive.additive.densityKgPerL;
  const waterKg = waterL * densityKgPerL(glycol, { tempC: AT_20_C, massFraction: 0 });
  const glycolKg = residualKg * share + (additiveKg * additive.additive.massPercent) / 100;
  return { ok: true, massPercent: (100 * glycolKg) / (residualKg + additiveKg + waterKg) };
}
