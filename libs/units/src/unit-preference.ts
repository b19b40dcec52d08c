export type TemperatureUnit = '°C' | '°F';
export type VolumeUnit = 'L' | 'US qt';
export type PressureUnit = 'kPa' | 'psi' | 'bar';
export type TorqueUnit = 'Nm' | 'lbf·ft';
export type LengthUnit = 'mm' | 'in';

/** The units one person wants to see. Everything is stored in °C, L, kPa, Nm and mm; only showing and typing change. */
export interface UnitPreference {
  readonly temperature: TemperatureUnit;
  readonly volume: VolumeUnit;
  readonly pressure: PressureUnit;
  readonly torque: TorqueUnit;
  readonly length: LengthUnit;
}

/** What a person sees who has chosen nothing. */
export const METRIC_UNITS: UnitPreference = { temperature: '°C', volume: 'L', pressure: 'kPa', torque: 'Nm', length: 'mm' };

/** The choice of a person who thinks in US units. */
export const US_UNITS: UnitPreference = { temperature: '°F', volume: 'US qt', pressure: 'psi', torque: 'lbf·ft', length: 'in' };
