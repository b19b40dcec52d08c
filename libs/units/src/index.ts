export { celsiusToFahrenheit, fahrenheitToCelsius } from './temperature.ts';
export { fahrenheitDegreesToKelvin, kelvinToFahrenheitDegrees } from './temperature-difference.ts';
export { litresToUsQuarts, usQuartsToLitres } from './volume.ts';
export { barToKPa, kPaToBar, kPaToPsi, psiToKPa } from './pressure.ts';
export { newtonMetresToPoundFeet, poundFeetToNewtonMetres } from './torque.ts';
export { inchesToMillimetres, millimetresToInches } from './length.ts';
export {
  METRIC_UNITS,
  US_UNITS,
  type LengthUnit,
  type PressureUnit,
  type TemperatureUnit,
  type TorqueUnit,
  type UnitPreference,
  type VolumeUnit,
} from './unit-preference.ts';
export { shownLength, shownPressure, shownTemperature, shownTemperatureDifference, shownTorque, shownVolume } from './shown-figure.ts';
export { typedLength, typedPressure, typedTemperature, typedTemperatureDifference, typedTorque, typedVolume } from './typed-figure.ts';
export { formatFigure } from './format-figure.ts';
export {
  formatLength,
  formatPressure,
  formatTemperature,
  formatTemperatureDifference,
  formatTorque,
  formatVolume,
  type Shown,
} from './format-quantity.ts';
