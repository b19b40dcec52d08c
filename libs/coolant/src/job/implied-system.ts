import { WATER_KG_PER_L } from '../data/pure-density.ts';
import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { bisect } from '../numeric/bisect.ts';
import { refuse, type Grounds, type Outcome } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { type Additive, type AdditiveInput } from '../strength/additive.ts';
import { creditedMassPercent } from '../strength/credited-mass-percent.ts';
import { densityAt20 } from '../strength/density-at-20.ts';
import { FREEZING_CURVE } from '../strength/freezing-curve.ts';
import { strengthOfMass } from '../strength/strength-of-mass.ts';
import { type StrengthInput } from '../strength/strength.ts';
import { toAdditive } from '../strength/to-additive.ts';
import { toStrength } from '../strength/to-strength.ts';

export interface ImpliedSystemInput {
  readonly glycol: Glycol;
  readonly systemVolumeL: number;
  /** Missing on arrival plus drained. */
  readonly spaceL: number;
  readonly residual: StrengthInput;
  readonly additive: AdditiveInput;
  /** What really went in, measured apart at 20 °C. */
  readonly additiveL: number;
  readonly waterL: number;
  readonly measured: StrengthInput;
}

/** Two explanations of one reading; each holds if the other figure was right. */
export interface ImpliedSystem extends Grounds {
  /** What must have stayed in, and what the system then holds, if the residual's strength was right; null where none fits. */
  readonly residualL: number | null;
  readonly systemVolumeL: number | null;
  /** How strong what stayed must have been if the capacity was right; null where none in the table fits. */
  readonly residualVolumePercent: number | null;
}

interface Poured {
  readonly kg: number;
  readonly glycolKg: number;
}

function pouredOf(input: ImpliedSystemInput, additive: Additive): Poured {
  const additiveKg = input.additiveL * additive.densityKgPerL;
  return { kg: additiveKg + input.waterL * WATER_KG_PER_L, glycolKg: (additiveKg * additive.massPercent) / 100 };
}

/** From R·ρ₀·w₀ + glycol = w·(R·ρ₀ + poured). */
function residualVolume(glycol: Glycol, poured: Poured, fractions: { residual: number; measured: number }): number | null {
  const { residual, measured } = fractions;
  const residualKg = (poured.glycolKg - measured * poured.kg) / (measured - residual);
  const residualL = residualKg / densityAt20(glycol, residual);
  return Number.isFinite(residualL) && residualL >= 0 ? residualL : null;
}

function residualStrength(glycol: Glycol, poured: Poured, known: { residualL: number; measured: number }): number | null {
  const { residualL, measured } = known;
  const surplus = (w: number): number => residualL * densityAt20(glycol, w) * (w - measured);
  const wanted = measured * poured.kg - poured.glycolKg;
  const end = FREEZING_CURVE[glycol].endMassPercent / 100;
  if (residualL <= 0 || wanted < surplus(0) || wanted > surplus(end)) return null;
  return strengthOfMass(glycol, 100 * bisect(surplus, wanted, { low: 0, high: end })).volumePercent;
}

function check(input: ImpliedSystemInput): ReturnType<typeof checkNumber> {
  const volume = { unit: 'L', least: 0, most: 500 };
  return (
    checkNumber(input.systemVolumeL, { ...volume, field: 'systemVolumeL', name: 'The system volume', least: 0.1 }) ??
    checkNumber(input.spaceL, { ...volume, field: 'spaceL', name: 'The space to fill', most: input.systemVolumeL }) ??
    checkNumber(input.additiveL, { ...volume, field: 'additiveL', name: 'The additive poured in' }) ??
    checkNumber(input.waterL, { ...volume, field: 'waterL', name: 'The water poured in' })
  );
}

/**
 * What a reading after the hot run says about the vehicle: how much must really have stayed in the block, or how strong
 * that must have been. To be kept with the vehicle beside the old figures, never over them.
 *
 * @param input The filling as it was done, and the reading
 * @returns Both explanations, each null where it can't explain the reading
 * @example impliedSystem({ …, spaceL: 4, additiveL: 2.17, waterL: 1.88, measured: { volumePercent: 43 } }) // { residualL: 4.4, systemVolumeL: 8.4, … }
 */
export function impliedSystem(input: ImpliedSystemInput): Outcome<ImpliedSystem> {
  const { glycol } = input;
  const problem = check(input);
  if (problem) return refuse(problem);
  const additive = toAdditive(glycol, input.additive);
  if (!additive.ok) return additive;
  const residual = toStrength(glycol, input.residual, { field: 'residual' });
  if (!residual.ok) return residual;
  const measured = toStrength(glycol, input.measured, { field: 'measured' });
  if (!measured.ok) return measured;
  const poured = pouredOf(input, additive.additive);
  const measuredFraction = creditedMassPercent(glycol, measured.strength) / 100;
  const fractions = { residual: creditedMassPercent(glycol, residual.strength) / 100, measured: measuredFraction };
  const residualL = residualVolume(glycol, poured, fractions);
  return {
    ok: true,
    residualL,
    systemVolumeL: residualL === null ? null : residualL + input.spaceL,
    residualVolumePercent: residualStrength(glycol, poured, { residualL: input.systemVolumeL - input.spaceL, measured: measuredFraction }),
    assumptions: [
      'The reading, the poured amounts and the drained volume are right, and everything has mixed.',
      'Either the capacity was wrong or the strength of what stayed in: one reading does not tell which.',
      ...additive.assumptions,
    ],
    warnings: additive.warnings,
    sources: [SOURCE.freezing, SOURCE.density],
  };
}
