import { inchesToMillimetres } from './length.ts';
import { barToKPa, psiToKPa } from './pressure.ts';
import { fahrenheitDegreesToKelvin } from './temperature-difference.ts';
import { fahrenheitToCelsius } from './temperature.ts';
import { poundFeetToNewtonMetres } from './torque.ts';
import { type LengthUnit, type PressureUnit, type TemperatureUnit, type TorqueUnit, type VolumeUnit } from './unit-preference.ts';
import { usQuartsToLitres } from './volume.ts';

/**
 * A temperature as a person typed it, in °C for storing.
 *
 * @param value The number typed
 * @param unit The unit it was typed in
 * @example typedTemperature(-40, '°F') // -40
 */
export function typedTemperature(value: number, unit: TemperatureUnit): number {
  return unit === '°C' ? value : fahrenheitToCelsius(value);
}

/**
 * A difference of temperatures as a person typed it, in K.
 *
 * @param value The number typed
 * @param unit The unit it was typed in
 * @example typedTemperatureDifference(9, '°F') // 5
 */
export function typedTemperatureDifference(value: number, unit: TemperatureUnit): number {
  return unit === '°C' ? value : fahrenheitDegreesToKelvin(value);
}

/**
 * A volume as a person typed it, in L.
 *
 * @param value The number typed
 * @param unit The unit it was typed in
 * @example typedVolume(4, 'US qt') // 3.785411784
 */
export function typedVolume(value: number, unit: VolumeUnit): number {
  return unit === 'L' ? value : usQuartsToLitres(value);
}

/**
 * A pressure as a person typed it, in kPa.
 *
 * @param value The number typed
 * @param unit The unit it was typed in
 * @example typedPressure(15, 'psi') // 103.42135939752542
 */
export function typedPressure(value: number, unit: PressureUnit): number {
  switch (unit) {
    case 'kPa':
      return value;
    case 'psi':
      return psiToKPa(value);
    case 'bar':
      return barToKPa(value);
  }
}

/**
 * A torque as a person typed it, in Nm. The figure as printed, its unit and its page are kept beside it elsewhere.
 *
 * @param value The number typed
 * @param unit The unit it was typed in
 * @example typedTorque(10, 'lbf·ft') // 13.558179483314003
 */
export function typedTorque(value: number, unit: TorqueUnit): number {
  return unit === 'Nm' ? value : poundFeetToNewtonMetres(value);
}

/**
 * A length as a person typed it, in mm.
 *
 * @param value The number typed
 * @param unit The unit it was typed in
 * @example typedLength(2, 'in') // 50.8
 */
export function typedLength(value: number, unit: LengthUnit): number {
  return unit === 'mm' ? value : inchesToMillimetres(value);
}
