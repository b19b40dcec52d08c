import { type Glycol } from '../glycol.ts';
import { type Grounds, type Outcome } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { creditedMassPercent } from '../strength/credited-mass-percent.ts';
import { strengthWarnings } from '../strength/strength-warnings.ts';
import { type StrengthInput } from '../strength/strength.ts';
import { toStrength } from '../strength/to-strength.ts';
import { mixtureAt } from './mixture-at.ts';
import { mixtureProperties, type MixtureProperties } from './mixture-properties.ts';

export interface PropertiesInput extends StrengthInput {
  readonly glycol: Glycol;
  /** At most 100 °C. */
  readonly tempC: number;
}

/**
 * Density, heat capacity, conductivity and viscosity of a coolant.
 *
 * @param input Glycol, exactly one strength, temperature in °C from the freezing point to 100
 * @returns The four properties; refused outside the published range
 * @example coolantProperties({ glycol: 'ethylene', volumePercent: 50, tempC: 80 }) // viscosityMPaS 1.02
 */
export function coolantProperties(input: PropertiesInput): Outcome<MixtureProperties & Grounds> {
  const { glycol, tempC } = input;
  const found = toStrength(glycol, input, { field: '' });
  if (!found.ok) return found;
  const inRange = mixtureAt(found.strength, tempC, { field: 'tempC' });
  if (!inRange.ok) return inRange;
  return {
    ok: true,
    ...mixtureProperties(glycol, { tempC, massFraction: creditedMassPercent(glycol, found.strength) / 100 }),
    assumptions: ['Pure glycol in water; inhibitors are not counted.'],
    warnings: strengthWarnings(found.strength, { percent: null }).filter(({ code }) => code === 'at-least'),
    sources: [SOURCE.density, SOURCE.properties],
  };
}
