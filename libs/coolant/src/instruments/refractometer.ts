import { formatFigure, formatTemperature, formatTemperatureDifference } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { exactlyOne } from '../checks/exactly-one.ts';
import { BRIX } from '../data/brix.ts';
import { GLYCOL_NAME, type Glycol } from '../glycol.ts';
import { linearTable } from '../numeric/linear-table.ts';
import { refuse, type Grounds, type Outcome, type Refused, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { shownProtection } from '../strength/shown-protection.ts';
import { strengthOfMass } from '../strength/strength-of-mass.ts';
import { strengthWarnings } from '../strength/strength-warnings.ts';
import { type Strength } from '../strength/strength.ts';
import { toStrength } from '../strength/to-strength.ts';
import { massFractionOfIndex, refractiveIndex, strongestIndex } from './refractive-index.ts';

export interface RefractometerInput {
  /** What is in the car. */
  readonly glycol: Glycol;
  /** What the instrument's °C scale is made for. */
  readonly scaleGlycol?: Glycol | undefined;
  readonly refractiveIndex?: number | undefined;
  /** The reading on a °C scale. */
  readonly freezingPointC?: number | undefined;
  readonly brix?: number | undefined;
  /** Temperature of the sample; left out: taken as 20 °C. */
  readonly sampleC?: number | undefined;
  /** The instrument corrects for temperature by itself. */
  readonly hasTemperatureCompensation?: boolean | undefined;
}

export interface RefractometerResult extends Strength, Grounds {
  /** The index the reading stands for. */
  readonly refractiveIndex: number;
  /** What the scale claims; null where a scale in °C wasn't read. */
  readonly claimedFreezingPointC: number | null;
  /** How much colder the scale claims than the mixture keeps, K; negative: it claims too little. */
  readonly overclaimK: number | null;
}

const indexOfBrix = linearTable(
  BRIX.map((row) => row.brix),
  BRIX.map((row) => row.refractiveIndex),
);

/** Samples nearer than this to 20 °C need no word. */
const SAMPLE_TOLERANCE_K = 2;

const RAW_READING = { least: 1.3, most: 1.6 };

function offScale(glycol: Glycol, index: number, side: 'below-water' | 'beyond-scale'): Refused {
  const strongest = formatFigure(strongestIndex(glycol), 4);
  const words =
    side === 'below-water'
      ? 'is lower than plain water shows. Set the instrument to zero with water and read again.'
      : `is beyond ${strongest}, the strongest mixture of ${GLYCOL_NAME[glycol]} that is published. Check which glycol it is, and thin the sample if need be.`;
  return refuse({
    code: 'reading-off-scale',
    kind: 'impossible',
    field: 'refractiveIndex',
    limit: side === 'below-water' ? 1.333 : strongestIndex(glycol),
    message: `A refractive index of ${formatFigure(index, 4)} ${words}`,
  });
}

function indexOfReading(input: RefractometerInput): Outcome<{ index: number }> {
  if (typeof input.refractiveIndex === 'number') {
    const rule = { field: 'refractiveIndex', name: 'The refractive index', unit: '', ...RAW_READING };
    const problem = checkNumber(input.refractiveIndex, rule);
    return problem ? refuse(problem) : { ok: true, index: input.refractiveIndex };
  }
  if (typeof input.brix === 'number') {
    const problem = checkNumber(input.brix, { field: 'brix', name: 'The Brix reading', unit: '', least: 0, most: 84 });
    return problem ? refuse(problem) : { ok: true, index: indexOfBrix(input.brix) };
  }
  const scale = input.scaleGlycol ?? input.glycol;
  const found = toStrength(scale, { freezingPointC: input.freezingPointC }, { field: '' });
  if (!found.ok) return found;
  return { ok: true, index: refractiveIndex(scale, (found.strength.massPercent ?? Number.NaN) / 100) };
}

/** A reading on the right °C scale is the freezing point itself; the way through the index would only blur it. */
function readStrength(input: RefractometerInput, index: number): Outcome<{ strength: Strength }> {
  const { glycol, freezingPointC } = input;
  if (typeof freezingPointC === 'number' && (input.scaleGlycol ?? glycol) === glycol) {
    return toStrength(glycol, { freezingPointC }, { field: '' });
  }
  const massFraction = massFractionOfIndex(glycol, index);
  if (typeof massFraction === 'string') return offScale(glycol, index, massFraction);
  return { ok: true, strength: strengthOfMass(glycol, massFraction * 100) };
}

function scaleWarnings(input: RefractometerInput, strength: Strength): readonly Warning[] {
  const { glycol, scaleGlycol, freezingPointC } = input;
  if (typeof freezingPointC !== 'number') return [];
  if (scaleGlycol === undefined) {
    const text = `Which glycol the scale is made for was not said: ${GLYCOL_NAME[glycol]} is assumed. On the wrong scale the reading is wrong by 5 K and more.`;
    return [{ code: 'scale-unknown', text }];
  }
  if (scaleGlycol === glycol) return [];
  const overclaimK = strength.freezingPointC - freezingPointC;
  const difference = formatTemperatureDifference(Math.abs(overclaimK), { unit: '°C', decimals: 1 });
  const keeps = formatTemperature(shownProtection(strength.freezingPointC, { unit: '°C' }), { unit: '°C' });
  const text =
    overclaimK > 0
      ? `Wrong scale: read on a scale for ${GLYCOL_NAME[scaleGlycol]}, ${GLYCOL_NAME[glycol]} seems ${difference} better protected than it is. It keeps to ${keeps} only.`
      : `Wrong scale: read on a scale for ${GLYCOL_NAME[scaleGlycol]}, ${GLYCOL_NAME[glycol]} seems ${difference} less protected than it is. It keeps to ${keeps}.`;
  return [{ code: 'wrong-scale', text }];
}

function sampleWarnings(input: RefractometerInput): readonly Warning[] {
  const { sampleC, hasTemperatureCompensation } = input;
  if (sampleC === undefined || hasTemperatureCompensation === true || Math.abs(sampleC - 20) <= SAMPLE_TOLERANCE_K) return [];
  const sample = formatTemperature(sampleC, { unit: '°C' });
  const text = `The sample is at ${sample}, the scale is made for 20 °C, and the instrument doesn't compensate. Let the sample come to 20 °C and read again; no correction was made.`;
  return [{ code: 'sample-not-at-20', text }];
}

function usesEstimate(input: RefractometerInput): boolean {
  const isOwnScale = typeof input.freezingPointC === 'number' && (input.scaleGlycol ?? input.glycol) === input.glycol;
  return !isOwnScale && (input.glycol === 'propylene' || input.scaleGlycol === 'propylene');
}

function checkSample(input: RefractometerInput): ReturnType<typeof checkNumber> {
  const { refractiveIndex: index, freezingPointC, brix, sampleC } = input;
  return (
    exactlyOne({ refractiveIndex: index, freezingPointC, brix }, 'refractiveIndex') ??
    checkNumber(sampleC ?? 20, { field: 'sampleC', name: "The sample's temperature", unit: '°C', least: -60, most: 150 })
  );
}

/**
 * What a refractometer's reading says of the coolant, whichever scale it has, and whichever glycol that scale is for.
 *
 * A reading on the scale of the other glycol is turned into the index that scale stands for and back by the right
 * glycol: the error is computed, never a constant.
 *
 * @param input Glycol in the car, exactly one reading, the scale's glycol, the sample's temperature
 * @returns Strength with the scale's overclaim; refused where the reading belongs to no published mixture
 * @example refractometer({ glycol: 'propylene', scaleGlycol: 'ethylene', freezingPointC: -44.5 }) // freezingPointC −33.5
 */
export function refractometer(input: RefractometerInput): Outcome<RefractometerResult> {
  const problem = checkSample(input);
  if (problem) return refuse(problem);
  const reading = indexOfReading(input);
  if (!reading.ok) return reading;
  const found = readStrength(input, reading.index);
  if (!found.ok) return found;
  const { strength } = found;
  const claimed = input.freezingPointC ?? null;
  const estimate: Warning = {
    code: 'estimate',
    text: 'No published refractive index of propylene glycol was found: this is an estimate, to about 1 mass %.',
  };
  return {
    ok: true,
    ...strength,
    refractiveIndex: reading.index,
    claimedFreezingPointC: claimed,
    overclaimK: claimed === null ? null : strength.freezingPointC - claimed,
    assumptions: [
      'Only glycol and water: inhibitors, dye and dirt bend light too.',
      ...(input.sampleC === undefined ? ['The sample is at 20 °C, or the instrument compensates.'] : []),
    ],
    warnings: [
      ...scaleWarnings(input, strength),
      ...sampleWarnings(input),
      ...(usesEstimate(input) ? [estimate] : []),
      ...strengthWarnings(strength, { percent: null }),
    ],
    sources: [SOURCE.freezing, SOURCE.refraction[input.glycol], ...(input.brix === undefined ? [] : [SOURCE.brix])],
  };
}
