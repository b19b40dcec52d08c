import { formatFigure } from './format-figure.ts';
import { shownLength, shownPressure, shownTemperature, shownTemperatureDifference, shownTorque, shownVolume } from './shown-figure.ts';
import { type LengthUnit, type PressureUnit, type TemperatureUnit, type TorqueUnit, type VolumeUnit } from './unit-preference.ts';

/** How to show a quantity: the unit, and digits after the point where the usual number of them doesn't suit. */
export interface Shown<Unit extends string> {
  readonly unit: Unit;
  readonly decimals?: number | undefined;
}

const USUAL_DECIMALS: Readonly<Record<TemperatureUnit | VolumeUnit | PressureUnit | TorqueUnit | LengthUnit, number>> = {
  '°C': 0,
  '°F': 0,
  L: 2,
  'US qt': 2,
  kPa: 0,
  psi: 1,
  bar: 2,
  Nm: 0,
  'lbf·ft': 0,
  mm: 1,
  in: 3,
};

function withUnit<Unit extends keyof typeof USUAL_DECIMALS>(value: number, shown: Shown<Unit>): string {
  return `${formatFigure(value, shown.decimals ?? USUAL_DECIMALS[shown.unit])} ${shown.unit}`;
}

/**
 * A temperature with its unit, rounded to the nearest. Frost protection is rounded towards warmer by the coolant
 * library before it comes here.
 *
 * @param tempC Temperature in °C
 * @param shown Unit and decimals (usually none)
 * @example formatTemperature(-37, { unit: '°F' }) // '−35 °F'
 */
export function formatTemperature(tempC: number, shown: Shown<TemperatureUnit>): string {
  return withUnit(shownTemperature(tempC, shown.unit), shown);
}

/**
 * A difference of temperatures: in kelvin beside °C, in Fahrenheit degrees beside °F.
 *
 * @param differenceK Difference in K
 * @param shown Unit and decimals (usually none)
 * @example formatTemperatureDifference(5, { unit: '°C' }) // '5 K'
 */
export function formatTemperatureDifference(differenceK: number, shown: Shown<TemperatureUnit>): string {
  const figure = formatFigure(shownTemperatureDifference(differenceK, shown.unit), shown.decimals ?? USUAL_DECIMALS[shown.unit]);
  return `${figure} ${shown.unit === '°C' ? 'K' : '°F'}`;
}

/**
 * A volume with its unit.
 *
 * @param volumeL Volume in L
 * @param shown Unit and decimals (usually two)
 * @example formatVolume(2.156, { unit: 'L' }) // '2.16 L'
 */
export function formatVolume(volumeL: number, shown: Shown<VolumeUnit>): string {
  return withUnit(shownVolume(volumeL, shown.unit), shown);
}

/**
 * A pressure with its unit. Say beside it whether it is gauge or absolute.
 *
 * @param pressureKPa Pressure in kPa
 * @param shown Unit and decimals (usually none for kPa, one for psi, two for bar)
 * @example formatPressure(103.42135939752542, { unit: 'psi' }) // '15.0 psi'
 */
export function formatPressure(pressureKPa: number, shown: Shown<PressureUnit>): string {
  return withUnit(shownPressure(pressureKPa, shown.unit), shown);
}

/**
 * A torque with its unit.
 *
 * @param torqueNm Torque in Nm
 * @param shown Unit and decimals (usually none)
 * @example formatTorque(10, { unit: 'lbf·ft', decimals: 1 }) // '7.4 lbf·ft'
 */
export function formatTorque(torqueNm: number, shown: Shown<TorqueUnit>): string {
  return withUnit(shownTorque(torqueNm, shown.unit), shown);
}

/**
 * A length with its unit.
 *
 * @param lengthMm Length in mm
 * @param shown Unit and decimals (usually one for mm, three for inches)
 * @example formatLength(54, { unit: 'mm' }) // '54.0 mm'
 */
export function formatLength(lengthMm: number, shown: Shown<LengthUnit>): string {
  return withUnit(shownLength(lengthMm, shown.unit), shown);
}
