import { formatFigure, type UnitPreference } from '#libs/units';
import type { Quantity } from './form/bench-field.ts';
import { measureOf } from './units/measure.ts';

/** A computed value that says how it is known, as the partial `figure` draws it. */
export interface ResultFigure {
  readonly value: string;
  readonly unit: string;
  readonly how: 'computed';
  readonly word: string;
  readonly said: string;
  readonly small: true;
}

/** A figure from its text, rounded by whoever knows which way. */
export const textFigure = (value: string, unit: string, { word, said = '' }: { word: string; said?: string }): ResultFigure => ({
  value,
  unit,
  how: 'computed',
  word,
  said,
  small: true,
});

/** A figure in a person's units. */
export function resultFigure(
  value: number,
  quantity: Quantity,
  { units, decimals, word, said = '' }: { units: UnitPreference; decimals?: number; word: string; said?: string },
): ResultFigure {
  const measure = measureOf(quantity, units);
  return textFigure(formatFigure(measure.shown(value), decimals ?? measure.decimals), measure.unit, { word, said });
}
