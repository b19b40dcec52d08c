import type { UnitPreference } from '#libs/units';
import type { Address } from '../address-of.ts';
import type { Quantity } from '../form/bench-field.ts';
import { measureOf } from '../units/measure.ts';
import { unitMark, unitsOfMark } from '../units/unit-mark.ts';

interface Figure {
  readonly name: string;
  /** In °C, L or kPa. */
  readonly value: number;
  readonly quantity: Quantity;
  /** Of the person, where the address names none. */
  readonly units: UnitPreference;
}

/** The same page with another figure in one field, in the units that the rest of its address is typed in; rounded up. */
export function withFigure({ path, query }: Address, { name, value, quantity, units }: Figure): string {
  const changed = new URLSearchParams(query);
  const typedIn = unitsOfMark(changed.get('in') ?? '', units);
  const shown = measureOf(quantity, typedIn).shown(value);
  changed.set(name, String(Math.ceil(shown * 100 - 1e-6) / 100));
  changed.set('in', unitMark(typedIn));
  changed.delete('was');
  return `${path}?${changed.toString()}`;
}
