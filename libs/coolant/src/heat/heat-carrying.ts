import { type Glycol } from '../glycol.ts';
import { type Grounds, type Outcome } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { creditedMassPercent } from '../strength/credited-mass-percent.ts';
import { FREEZING_CURVE } from '../strength/freezing-curve.ts';
import { type StrengthInput } from '../strength/strength.ts';
import { toStrength } from '../strength/to-strength.ts';
import { mixtureAt } from './mixture-at.ts';
import { mixtureProperties, type MixtureProperties } from './mixture-properties.ts';

export interface HeatCarryingInput extends StrengthInput {
  readonly glycol: Glycol;
  /** 80 °C where left out. */
  readonly tempC?: number | undefined;
}

/** One fluid of the comparison. Ratios are to plain water at the same temperature and the same flow. */
export interface HeatCarryingRow extends MixtureProperties {
  readonly fluid: 'water' | 'half-and-half' | 'this-mixture';
  readonly volumePercent: number;
  /** What one litre takes up per kelvin, kJ. */
  readonly heatPerLitreKJPerK: number;
  readonly heatPerLitreRatio: number;
  readonly viscosityRatio: number;
  /** How well it passes heat to the metal at the same speed of flow. */
  readonly heatPassingRatio: number;
}

export interface HeatCarrying extends Grounds {
  readonly tempC: number;
  readonly rows: readonly HeatCarryingRow[];
}

const USUAL_TEMP_C = 80;
const HALF_VOLUME_PERCENT = 50;

/** Mouromtseff number of a turbulent flow: ρ^0.8·k^0.6·c^0.4 / μ^0.4. */
function heatPassing(p: MixtureProperties): number {
  return (p.densityKgPerL ** 0.8 * p.conductivityWPerMK ** 0.6 * p.heatCapacityKJPerKgK ** 0.4) / p.viscosityMPaS ** 0.4;
}

function row(
  fluid: HeatCarryingRow['fluid'],
  volumePercent: number,
  compared: { readonly mixture: MixtureProperties; readonly water: MixtureProperties },
): HeatCarryingRow {
  const { mixture, water } = compared;
  const heatPerLitreKJPerK = mixture.densityKgPerL * mixture.heatCapacityKJPerKgK;
  return {
    fluid,
    volumePercent,
    ...mixture,
    heatPerLitreKJPerK,
    heatPerLitreRatio: heatPerLitreKJPerK / (water.densityKgPerL * water.heatCapacityKJPerKgK),
    viscosityRatio: mixture.viscosityMPaS / water.viscosityMPaS,
    heatPassingRatio: heatPassing(mixture) / heatPassing(water),
  };
}

/**
 * Why stronger is not better: how much heat a mixture carries, how thick it is and how well it passes heat on, beside
 * plain water and beside 50 volume %.
 *
 * The heat passed on compares fluids in the same turbulent flow by the Mouromtseff number (1942, after
 * Dittus-Boelter; from memory).
 *
 * @param input Glycol, exactly one strength, temperature in °C up to 100 (80 where left out)
 * @example heatCarrying({ glycol: 'ethylene', volumePercent: 50 }).rows[2].heatPerLitreRatio // 0.894
 */
export function heatCarrying(input: HeatCarryingInput): Outcome<HeatCarrying> {
  const { glycol, tempC = USUAL_TEMP_C } = input;
  const found = toStrength(glycol, input, { field: '' });
  if (!found.ok) return found;
  const water = toStrength(glycol, { volumePercent: 0 }, { field: '' });
  if (!water.ok) return water;
  for (const strength of [found.strength, water.strength]) {
    const inRange = mixtureAt(strength, tempC, { field: 'tempC' });
    if (!inRange.ok) return inRange;
  }
  const at = (massPercent: number): MixtureProperties => mixtureProperties(glycol, { tempC, massFraction: massPercent / 100 });
  const plain = at(0);
  const half = at(FREEZING_CURVE[glycol].massPercentOfVolume(HALF_VOLUME_PERCENT));
  const own = at(creditedMassPercent(glycol, found.strength));
  return {
    ok: true,
    tempC,
    rows: [
      row('water', 0, { mixture: plain, water: plain }),
      row('half-and-half', HALF_VOLUME_PERCENT, { mixture: half, water: plain }),
      row('this-mixture', found.strength.volumePercent, { mixture: own, water: plain }),
    ],
    assumptions: [
      'Same flow and same temperature for all three.',
      'Heat passed to the metal compares turbulent flow by the Mouromtseff number (from memory).',
      ...(input.tempC === undefined ? [`At ${USUAL_TEMP_C} °C, assumed.`] : []),
    ],
    warnings: [],
    sources: [SOURCE.density, SOURCE.properties],
  };
}
