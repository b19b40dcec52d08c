import type { FamilyFeature } from '#libs/fitment';

export const PROVENANCE_WORDS: Readonly<Record<string, string>> = {
  listing: 'listed',
  measured: 'measured',
  photo: 'from a photo',
};

/**
 * A value of a feature as it is said at the bench.
 *
 * @example valueText(flangeDiameter, 54) // '54.0 mm'
 * @example valueText(seal, 'o-ring') // 'O-ring'
 */
export function valueText(feature: FamilyFeature, value: number | string): string {
  if (feature.kind === 'category') return feature.values.find(({ key }) => key === value)?.name ?? String(value);
  const figure = Number(value);
  if (feature.unit === 'count') return String(figure);
  return `${decimalsOf(figure) < 1 ? figure.toFixed(1) : String(figure)} ${feature.unit}`;
}

const decimalsOf = (figure: number): number => (String(figure).split('.')[1] ?? '').length;

/** @example capital('flange diameter') // 'Flange diameter' */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
