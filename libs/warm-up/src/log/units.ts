import { fahrenheitToCelsius } from '#libs/units';
import { type Quantity } from './quantity.ts';

export type Unit = '°C' | '°F' | 'K' | 'km/h' | 'mph' | 'm/s' | '1/min' | '%' | 'g/s' | 'kg/h' | 'lb/min';
export type TimeUnit = 'h' | 'min' | 's' | 'ms' | 'µs' | 'days';

/** Units a quantity may be logged in; the first is the one it is kept in. */
export const UNITS_OF: Readonly<Record<Quantity, readonly Unit[]>> = {
  coolant: ['°C', '°F', 'K'],
  intake: ['°C', '°F', 'K'],
  ambient: ['°C', '°F', 'K'],
  speed: ['km/h', 'mph', 'm/s'],
  rpm: ['1/min'],
  load: ['%'],
  airFlow: ['g/s', 'kg/h', 'lb/min'],
};

/** Exact by definition: 1 mile = 1.609344 km, 1 lb = 453.59237 g. */
const TO_BASE: Readonly<Record<Unit, (value: number) => number>> = {
  '°C': (value) => value,
  '°F': fahrenheitToCelsius,
  K: (value) => value - 273.15,
  'km/h': (value) => value,
  mph: (value) => value * 1.609344,
  'm/s': (value) => value * 3.6,
  '1/min': (value) => value,
  '%': (value) => value,
  'g/s': (value) => value,
  'kg/h': (value) => value / 3.6,
  'lb/min': (value) => (value * 453.59237) / 60,
};

export const SECONDS_IN: Readonly<Record<TimeUnit, number>> = { days: 86_400, h: 3600, min: 60, s: 1, ms: 1e-3, µs: 1e-6 };

/** A reading in °C, km/h, 1/min, % or g/s. */
export function toBase(value: number, unit: Unit): number {
  return TO_BASE[unit](value);
}
