import { kPaToBar, kPaToPsi } from './pressure.ts';
import { kelvinToFahrenheitDegrees } from './temperature-difference.ts';
import { celsiusToFahrenheit } from './temperature.ts';
import { newtonMetresToPoundFeet } from './torque.ts';
import { millimetresToInches } from './length.ts';
import { type LengthUnit, type PressureUnit, type TemperatureUnit, type TorqueUnit, type VolumeUnit } from './unit-preference.ts';
import { litresToUsQuarts } from './volume.ts';

/**
 * A stored temperature as the number to show in a person's unit, unrounded.
 *
 * @param tempC Temperature in °C
 * @param unit Unit to show
 * @example shownTemperature(100, '°F') // 212
 */
export function shownTemperature(tempC: number, unit: TemperatureUnit): number {
  return unit === '°C' ? tempC : celsiusToFahrenheit(tempC);
}

/**
 * A stored difference of temperatures as the number to show, unrounded.
 *
 * @param differenceK Difference in K
 * @param unit Unit to show
 * @example shownTemperatureDifference(5, '°F') // 9
 */
export function shownTemperatureDifference(differenceK: number, unit: TemperatureUnit): number {
  return unit === '°C' ? differenceK : kelvinToFahrenheitDegrees(differenceK);
}

/**
 * A stored volume as the number to show, unrounded.
 *
 * @param volumeL Volume in L
 * @param unit Unit to show
 * @example shownVolume(3.785411784, 'US qt') // 4
 */
export function shownVolume(volumeL: number, unit: VolumeUnit): number {
  return unit === 'L' ? volumeL : litresToUsQuarts(volumeL);
}

/**
 * A stored pressure as the number to show, unrounded.
 *
 * @param pressureKPa Pressure in kPa
 * @param unit Unit to show
 * @example shownPressure(140, 'bar') // 1.4
 */
export function shownPressure(pressureKPa: number, unit: PressureUnit): number {
  switch (unit) {
    case 'kPa':
      return pressureKPa;
    case 'psi':
      return kPaToPsi(pressureKPa);
    case 'bar':
      return kPaToBar(pressureKPa);
  }
}

/**
 * A stored torque as the number to show, unrounded.
 *
 * @param torqueNm Torque in Nm
 * @param unit Unit to show
 * @example shownTorque(10, 'lbf·ft') // 7.3756214927726536
 */
export function shownTorque(torqueNm: number, unit: TorqueUnit): number {
  return unit === 'Nm' ? torqueNm : newtonMetresToPoundFeet(torqueNm);
}

/**
 * A stored length as the number to show, unrounded.
 *
 * @param lengthMm Length in mm
 * @param unit Unit to show
 * @example shownLength(50.8, 'in') // 2
 */
export function shownLength(lengthMm: number, unit: LengthUnit): number {
  return unit === 'mm' ? lengthMm : millimetresToInches(lengthMm);
}
