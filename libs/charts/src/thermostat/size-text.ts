import { formatFigure } from '../text/format-figure.ts';

/**
 * Writes a dimension the way drawings do: one place always, a second one where it was measured, a question mark where it is not known.
 *
 * @example sizeText(54); // '54.0'
 * @example sizeText(54.02); // '54.02'
 */
export function sizeText(sizeMm: number | null): string {
  if (sizeMm === null) return '?';
  const isTenths = Math.abs(sizeMm * 10 - Math.round(sizeMm * 10)) < 1e-6;
  return formatFigure(sizeMm, { decimals: isTenths ? 1 : 2, fixed: true });
}
