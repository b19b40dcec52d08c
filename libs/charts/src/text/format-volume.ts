import { formatFigure } from './format-figure.ts';

/**
 * Writes a volume as the workshop says it: millilitres below one litre, litres from there.
 *
 * @example formatVolume(0.04); // '40 mL'
 * @example formatVolume(4.8); // '4.8 L'
 */
export function formatVolume(volumeL: number): string {
  const volumeMl = volumeL * 1000;
  return Math.abs(volumeMl) < 999.5 ? `${formatFigure(volumeMl, { decimals: 0 })} mL` : `${formatFigure(volumeL, { decimals: 2 })} L`;
}
