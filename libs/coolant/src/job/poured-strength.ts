import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { type Grounds, type Outcome, type Problem, refuse } from '../outcome.ts';
import { mix } from '../recipe/mix.ts';
import { SOURCE } from '../sources.ts';
import { type AdditiveInput } from '../strength/additive.ts';
import { creditedMassPercent } from '../strength/credited-mass-percent.ts';
import { type StrengthInput } from '../strength/strength.ts';
import { toAdditive } from '../strength/to-additive.ts';
import { toStrength } from '../strength/to-strength.ts';

export interface PouredStrengthInput {
  readonly glycol: Glycol;
  /** What stayed in, with kept coolant that went back. */
  readonly residualL: number;
  readonly residual: StrengthInput;
  readonly additive: AdditiveInput;
  /** What really went in, measured apart at 20 °C. */
  readonly additiveL: number;
  readonly waterL: number;
}

export interface PouredStrength extends Grounds {
  /** Mass % of pure glycol. */
  readonly massPercent: number;
  /** What is in the system now, at 20 °C. */
  readonly volumeL: number;
}

function check({ residualL, additiveL, waterL }: PouredStrengthInput): Problem | undefined {
  const volume = { unit: 'L', least: 0, most: 500 };
  return (
    checkNumber(residualL, { ...volume, field: 'residualL', name: 'What stayed in' }) ??
    checkNumber(additiveL, { ...volume, field: 'additiveL', name: 'The additive poured in' }) ??
    checkNumber(waterL, { ...volume, field: 'waterL', name: 'The water poured in' })
  );
}

/**
 * The strength that the amounts really poured give with what stayed in, by mass: what the reading after the run is held against.
 *
 * @param input What stayed in, its strength, and what went in
 * @returns Mass % of pure glycol and volume; refused where nothing is in, or a strength is beyond the table
 * @example pouredStrength({ glycol: 'ethylene', residualL: 0, residual: { massPercent: 0 }, additive: { massPercent: 100 }, additiveL: 1, waterL: 1 }) // massPercent 52.7
 */
export function pouredStrength(input: PouredStrengthInput): Outcome<PouredStrength> {
  const { glycol, residualL: volumeL, additiveL, waterL } = input;
  const problem = check(input);
  if (problem) return refuse(problem);
  const additive = toAdditive(glycol, input.additive);
  if (!additive.ok) return additive;
  const residual = toStrength(glycol, input.residual, { field: 'residual' });
  if (!residual.ok) return residual;
  if (volumeL + additiveL + waterL === 0) {
    const message = 'Nothing stayed in and nothing was poured: give at least one of the volumes.';
    return refuse({ code: 'meaningless-value', kind: 'malformed', field: 'additiveL', message });
  }
  const massFraction = creditedMassPercent(glycol, residual.strength) / 100;
  const mixed = mix(glycol, { volumeL, massFraction }, { additive: additive.additive, additiveL, waterL });
  return {
    ok: true,
    massPercent: 100 * mixed.massFraction,
    volumeL: mixed.volumeL,
    assumptions: ['The amounts were measured at 20 °C, and everything has mixed.', ...additive.assumptions],
    warnings: additive.warnings,
    sources: [SOURCE.density],
  };
}
