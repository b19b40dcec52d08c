import type { UnitPreference } from '#libs/units';
import { type FieldView } from '../../../web/form-field.ts';

export interface UnitsView {
  readonly summary: string;
  readonly fields: readonly FieldView[];
  readonly back: string;
}

function choice(
  name: string,
  label: string,
  { value, options }: { value: string; options: readonly (readonly [string, string])[] },
): FieldView {
  return {
    id: `units-${name}`,
    name,
    label,
    value,
    short: true,
    options: options.map(([key, text]) => ({ value: key, label: text, selected: key === value })),
  };
}

/** The form by which a person says how figures are to be shown and typed. */
export function presentUnits({ temperature, volume, pressure }: UnitPreference, back: string): UnitsView {
  const volumeKey = volume === 'L' ? 'L' : 'qt';
  return {
    summary: `${temperature}, ${volume}, ${pressure}`,
    back,
    fields: [
      choice('temperature', 'Temperature', {
        value: temperature.slice(1),
        options: [
          ['C', '°C'],
          ['F', '°F'],
        ],
      }),
      choice('volume', 'Volume', {
        value: volumeKey,
        options: [
          ['L', 'Litres'],
          ['qt', 'US quarts'],
        ],
      }),
      choice('pressure', 'Pressure', {
        value: pressure,
        options: [
          ['kPa', 'kPa'],
          ['psi', 'psi'],
        ],
      }),
    ],
  };
}
