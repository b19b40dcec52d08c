import { formatFigure, formatPressure, formatTemperature, formatTemperatureDifference } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { refuse, type Grounds, type Outcome, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { creditedMassPercent } from '../strength/credited-mass-percent.ts';
import { strengthWarnings } from '../strength/strength-warnings.ts';
import { type StrengthInput } from '../strength/strength.ts';
import { toStrength } from '../strength/to-strength.ts';
import { ATMOSPHERE_LIMITS_M, atmosphereKPa } from './atmosphere.ts';
import { mixtureBoilingPointC } from './mixture-boiling-point.ts';

export interface BoilingInput extends StrengthInput {
  readonly glycol: Glycol;
  /** 0 where left out. */
  readonly altitudeM?: number | undefined;
  /** What is printed on the cap, kPa above the air; 0 (open) where left out. */
  readonly capGaugeKPa?: number | undefined;
  /** What the cap held on the tester, kPa above the air. Beats the printed figure. */
  readonly capMeasuredKPa?: number | undefined;
  /** Hottest coolant expected, °C, for the margin. */
  readonly hottestExpectedC?: number | undefined;
}

export interface Boiling extends Grounds {
  readonly boilingPointC: number;
  readonly absolutePressureKPa: number;
  readonly altitudeM: number;
  /** The figure that was used. */
  readonly capGaugeKPa: number;
  /** Boiling point above the hottest expected; null where none was given. */
  readonly marginK: number | null;
}

/** Vehicle caps stay well below; a larger figure is a slip of the pen or another unit. */
const MOST_CAP_KPA = 300;

/** Below this margin local hot spots boil. Common practice, no source. */
const SMALL_MARGIN_K = 10;

function check(input: BoilingInput): ReturnType<typeof checkNumber> {
  const { altitudeM = 0, capGaugeKPa = 0, capMeasuredKPa = 0, hottestExpectedC = 0 } = input;
  const altitude = { field: 'altitudeM', name: 'The altitude', unit: 'm', ...ATMOSPHERE_LIMITS_M, isCoverage: true };
  const cap = { name: "The cap's pressure", unit: 'kPa' };
  return (
    checkNumber(altitudeM, altitude) ??
    checkNumber(capGaugeKPa, { ...cap, field: 'capGaugeKPa', least: 0 }) ??
    checkNumber(capGaugeKPa, { ...cap, field: 'capGaugeKPa', most: MOST_CAP_KPA, isCoverage: true }) ??
    checkNumber(capMeasuredKPa, { ...cap, field: 'capMeasuredKPa', least: 0 }) ??
    checkNumber(capMeasuredKPa, { ...cap, field: 'capMeasuredKPa', most: MOST_CAP_KPA, isCoverage: true }) ??
    checkNumber(hottestExpectedC, { field: 'hottestExpectedC', name: 'The hottest expected coolant', unit: '°C', least: -50, most: 250 })
  );
}

function assumed(input: BoilingInput): readonly string[] {
  const lines: string[] = [];
  if (input.altitudeM === undefined) lines.push('Altitude: 0 m, assumed.');
  if (input.capMeasuredKPa !== undefined) {
    lines.push(`Cap: ${formatPressure(input.capMeasuredKPa, { unit: 'kPa' })} above the air, as measured; the printed figure is not used.`);
  } else if (input.capGaugeKPa === undefined) {
    lines.push('Cap: open (0 kPa), assumed.');
  } else {
    lines.push(
      `Cap: ${formatPressure(input.capGaugeKPa, { unit: 'kPa' })} above the air, as printed, not measured. A worn cap holds less.`,
    );
  }
  return [...lines, 'Standard air pressure for the altitude; the weather moves it by a few kPa.'];
}

function marginWarnings(boilingPointC: number, hottestExpectedC: number | undefined): readonly Warning[] {
  if (hottestExpectedC === undefined || boilingPointC - hottestExpectedC >= SMALL_MARGIN_K) return [];
  const margin = formatTemperatureDifference(boilingPointC - hottestExpectedC, { unit: '°C', decimals: 1 });
  const hottest = formatTemperature(hottestExpectedC, { unit: '°C' });
  return [{ code: 'margin-small', text: `Boils only ${margin} above the hottest expected ${hottest}. Hot spots boil before the rest.` }];
}

/**
 * Where the coolant boils in the closed system, at an altitude and under a cap.
 *
 * @param input Glycol, exactly one strength, altitude in m, cap in kPa above the air
 * @returns Boiling point with the absolute pressure; defaults are said in the assumptions
 * @example boiling({ glycol: 'ethylene', volumePercent: 50, capGaugeKPa: 103.42 }) // boilingPointC 129.64
 */
export function boiling(input: BoilingInput): Outcome<Boiling> {
  const problem = check(input);
  if (problem) return refuse(problem);
  const { glycol, hottestExpectedC } = input;
  const found = toStrength(glycol, input, { field: '' });
  if (!found.ok) return found;
  const { strength } = found;
  const altitudeM = input.altitudeM ?? 0;
  const capGaugeKPa = input.capMeasuredKPa ?? input.capGaugeKPa ?? 0;
  const absolutePressureKPa = atmosphereKPa(altitudeM) + capGaugeKPa;
  const boilingPointC = mixtureBoilingPointC(glycol, creditedMassPercent(glycol, strength) / 100, { absoluteKPa: absolutePressureKPa });
  const absolute = `${formatFigure(absolutePressureKPa, 1)} kPa absolute`;
  return {
    ok: true,
    boilingPointC,
    absolutePressureKPa,
    altitudeM,
    capGaugeKPa,
    marginK: hottestExpectedC === undefined ? null : boilingPointC - hottestExpectedC,
    assumptions: [...assumed(input), `Pure glycol in water at ${absolute}; inhibitors and dissolved air are not counted.`],
    warnings: [
      ...strengthWarnings(strength, { percent: null }).filter(({ code }) => code === 'at-least'),
      ...marginWarnings(boilingPointC, hottestExpectedC),
    ],
    sources: [SOURCE.saturation, SOURCE.glycolVapour[glycol], SOURCE.raoult, SOURCE.atmosphere],
  };
}
