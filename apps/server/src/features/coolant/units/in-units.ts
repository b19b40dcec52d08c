import { kelvinToFahrenheitDegrees, shownPressure, shownTemperature, shownVolume, type UnitPreference } from '#libs/units';
import { plainFigure } from './measure.ts';

const FIGURE_WITH_UNIT = /([-\u2212]?\d+(?:\.\d+)?) (°C|K|L|kPa)(?![\p{L}\d])/gu;
const TWO_WITH_UNIT = /([-\u2212]?\d+(?:\.\d+)?) to ([-\u2212]?\d+(?:\.\d+)?) (°C|K|L|kPa)(?![\p{L}\d])/gu;

function converted(text: string, unit: string, units: UnitPreference): { text: string; unit: string } {
  const value = Number(text.replace('\u2212', '-'));
  const decimals = text.split('.')[1]?.length ?? 0;
  if (unit === '°C' && units.temperature === '°F') return { text: plainFigure(shownTemperature(value, '°F'), decimals + 1), unit: '°F' };
  if (unit === 'K' && units.temperature === '°F') return { text: plainFigure(kelvinToFahrenheitDegrees(value), decimals + 1), unit: '°F' };
  if (unit === 'L' && units.volume !== 'L')
    return { text: plainFigure(shownVolume(value, units.volume), Math.max(2, decimals)), unit: units.volume };
  if (unit === 'kPa' && units.pressure !== 'kPa')
    return { text: plainFigure(shownPressure(value, units.pressure), decimals + 1), unit: units.pressure };
  return { text, unit };
}

/**
 * A sentence of the libraries, which speak in °C, K, L and kPa, in a person's units. One decimal more keeps a figure that was
 * rounded towards warmer exactly where it was.
 *
 * @example inUnits('Safe to −36 °C with 2.00 L.', US) // 'Safe to −32.8 °F with 2.11 US qt.'
 */
export function inUnits(text: string, units: UnitPreference): string {
  if (units.temperature === '°C' && units.volume === 'L' && units.pressure === 'kPa') return text;
  return text
    .replace(TWO_WITH_UNIT, (_whole, low: string, high: string, unit: string) => {
      const from = converted(low, unit, units);
      const to = converted(high, unit, units);
      return `${from.text} to ${to.text} ${to.unit}`;
    })
    .replace(FIGURE_WITH_UNIT, (_whole, figure: string, unit: string) => {
      const found = converted(figure, unit, units);
      return `${found.text} ${found.unit}`;
    });
}
