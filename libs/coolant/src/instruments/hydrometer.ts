import { formatFigure } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { MELINDER_MAX_MASS_FRACTION } from '../data/melinder.ts';
import { type Glycol } from '../glycol.ts';
import { densityKgPerL } from '../heat/density.ts';
import { bisect } from '../numeric/bisect.ts';
import { refuse, type Grounds, type Outcome, type Refused, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { strengthOfMass } from '../strength/strength-of-mass.ts';
import { strengthWarnings } from '../strength/strength-warnings.ts';
import { type Strength } from '../strength/strength.ts';

export interface HydrometerInput {
  readonly glycol: Glycol;
  /** Relative density as read. */
  readonly specificGravity: number;
  /** Temperature of the sample; left out: taken as 20 °C. */
  readonly sampleC?: number | undefined;
  /** Temperature of the water that the scale compares with; 20 °C where left out (many American scales: 15.6). */
  readonly referenceC?: number | undefined;
  /** How finely the scale can be read; 0.002 where left out. */
  readonly gravityUncertainty?: number | undefined;
}

export interface HydrometerResult extends Strength, Grounds {
  readonly densityKgPerL: number;
  /** Weakest and strongest mixture that the scale's fineness leaves open, volume %. */
  readonly volumePercentLow: number;
  readonly volumePercentHigh: number;
  /** The warmest freezing point it leaves open. */
  readonly warmestFreezingPointC: number;
}

const SAMPLE_LIMITS_C = { least: 0, most: 60 };
const USUAL_UNCERTAINTY = 0.002;
/** A band wider than this says little about the strength. Common practice, no source. */
const WIDE_BAND_PERCENT = 5;

function check(input: HydrometerInput): ReturnType<typeof checkNumber> {
  const { specificGravity, sampleC = 20, referenceC = 20, gravityUncertainty = USUAL_UNCERTAINTY } = input;
  const temperature = { unit: '°C', isCoverage: true, ...SAMPLE_LIMITS_C };
  return (
    checkNumber(specificGravity, { field: 'specificGravity', name: 'The gravity', unit: '', least: 0.8, most: 1.3 }) ??
    checkNumber(sampleC, { ...temperature, field: 'sampleC', name: "The sample's temperature" }) ??
    checkNumber(referenceC, { ...temperature, field: 'referenceC', name: "The scale's reference temperature" }) ??
    checkNumber(gravityUncertainty, { field: 'gravityUncertainty', name: "The scale's fineness", unit: '', least: 0, most: 0.02 })
  );
}

function offScale(input: HydrometerInput, limit: number): Refused {
  const side = input.specificGravity > limit ? 'heavier than the strongest published mixture' : 'lighter than plain water';
  return refuse({
    code: 'reading-off-scale',
    kind: 'impossible',
    field: 'specificGravity',
    limit,
    message:
      `A gravity of ${formatFigure(input.specificGravity, 3)} is ${side} at this temperature (${formatFigure(limit, 3)}). ` +
      `Check the sample's temperature, which glycol it is, and the float for bubbles.`,
  });
}

/**
 * What a hydrometer says of the coolant: gravity with the sample's temperature, by the mixture's density.
 *
 * The float's own growth with temperature is not corrected. Propylene glycol weighs so little more than water that a
 * hydrometer tells little; the open band is given.
 *
 * @param input Glycol, gravity, temperatures in °C (0 to 60), the scale's fineness
 * @returns Strength with the band left open; refused where the gravity belongs to no published mixture
 * @example hydrometer({ glycol: 'ethylene', specificGravity: 1.068, sampleC: 20 }).massPercent // 50.2
 */
export function hydrometer(input: HydrometerInput): Outcome<HydrometerResult> {
  const problem = check(input);
  if (problem) return refuse(problem);
  const { glycol, sampleC = 20, referenceC = 20, gravityUncertainty = USUAL_UNCERTAINTY } = input;
  const reference = densityKgPerL(glycol, { tempC: referenceC, massFraction: 0 });
  const gravityOf = (massFraction: number): number => densityKgPerL(glycol, { tempC: sampleC, massFraction }) / reference;
  const massPercentOf = (gravity: number): number => 100 * bisect(gravityOf, gravity, { low: 0, high: MELINDER_MAX_MASS_FRACTION });
  const lightest = gravityOf(0);
  const heaviest = gravityOf(MELINDER_MAX_MASS_FRACTION);
  if (input.specificGravity < lightest - gravityUncertainty) return offScale(input, lightest);
  if (input.specificGravity > heaviest + gravityUncertainty) return offScale(input, heaviest);
  const strength = strengthOfMass(glycol, massPercentOf(input.specificGravity));
  const low = strengthOfMass(glycol, massPercentOf(input.specificGravity - gravityUncertainty));
  const high = strengthOfMass(glycol, massPercentOf(input.specificGravity + gravityUncertainty));
  const band = high.volumePercent - low.volumePercent;
  const wide: Warning = {
    code: 'gravity-insensitive',
    text: `The scale leaves ${formatFigure(band, 0)} volume % open: a refractometer tells more.`,
  };
  return {
    ok: true,
    ...strength,
    densityKgPerL: input.specificGravity * reference,
    volumePercentLow: low.volumePercent,
    volumePercentHigh: high.volumePercent,
    warmestFreezingPointC: low.freezingPointC,
    assumptions: [
      ...(input.sampleC === undefined ? ['The sample is at 20 °C.'] : []),
      `The scale compares with water at ${formatFigure(referenceC, 1)} °C${input.referenceC === undefined ? ', assumed' : ''}.`,
      'Only glycol and water: inhibitors weigh too. The float is not corrected for its own growth.',
    ],
    warnings: [...(band > WIDE_BAND_PERCENT ? [wide] : []), ...strengthWarnings(strength, { percent: null })],
    sources: [SOURCE.density, SOURCE.freezing],
  };
}
