import {
  formatFigure,
  shownPressure,
  shownTemperature,
  shownTemperatureDifference,
  shownVolume,
  typedPressure,
  typedTemperature,
  typedTemperatureDifference,
  typedVolume,
  type UnitPreference,
} from '#libs/units';
import type { Quantity } from '../form/bench-field.ts';

/** How one quantity is written and typed by one person. */
export interface Measure {
  readonly unit: string;
  readonly decimals: number;
  readonly shown: (value: number) => number;
  readonly typed: (value: number) => number;
}

const ML_PER_L = 1000;

const asItIs = (unit: string, decimals: number): Measure => ({ unit, decimals, shown: (value) => value, typed: (value) => value });

function mark(units: UnitPreference): Measure {
  if (units.volume === 'L') return asItIs('mL', 0);
  return {
    unit: units.volume,
    decimals: 3,
    shown: (value) => shownVolume(value / ML_PER_L, units.volume),
    typed: (value) => typedVolume(value, units.volume) * ML_PER_L,
  };
}

/** The measure of a quantity in a person's units; `mark` is held in mL, the rest in °C, K, L and kPa. */
export function measureOf(quantity: Quantity, units: UnitPreference): Measure {
  const { temperature, volume, pressure } = units;
  switch (quantity) {
    case 'temperature':
      return {
        unit: temperature,
        decimals: 1,
        shown: (value) => shownTemperature(value, temperature),
        typed: (value) => typedTemperature(value, temperature),
      };
    case 'difference':
      return {
        unit: temperature === '°C' ? 'K' : '°F',
        decimals: 1,
        shown: (value) => shownTemperatureDifference(value, temperature),
        typed: (value) => typedTemperatureDifference(value, temperature),
      };
    case 'volume':
      return { unit: volume, decimals: 2, shown: (value) => shownVolume(value, volume), typed: (value) => typedVolume(value, volume) };
    case 'mark':
      return mark(units);
    case 'pressure':
      return {
        unit: pressure,
        decimals: 1,
        shown: (value) => shownPressure(value, pressure),
        typed: (value) => typedPressure(value, pressure),
      };
    case 'percent':
      return asItIs('%', 1);
    case 'massPercent':
      return asItIs('% by mass', 1);
    case 'metres':
      return asItIs('m', 0);
    case 'kilometres':
      return asItIs('km', 0);
    case 'months':
      return asItIs('months', 0);
    case 'perLitre':
      return asItIs('mg/L', 1);
    case 'count':
    case 'bare':
      return asItIs('', quantity === 'count' ? 0 : 4);
  }
}

/** A figure without needless zeros, as it stands in a field. @example plainFigure(6.2, 2) // '6.2' */
export function plainFigure(value: number, decimals: number): string {
  const text = formatFigure(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A figure with its unit, as it stands in a sentence. @example saidFigure(6.2, 'volume', METRIC_UNITS) // '6.2 L' */
export function saidFigure(value: number, quantity: Quantity, units: UnitPreference): string {
  const { unit, decimals, shown } = measureOf(quantity, units);
  return `${plainFigure(shown(value), decimals)} ${unit}`.trim();
}
