import { type VolumeUnit } from '#libs/units';
import { formatFigure } from './format-figure.ts';
import { formatVolume } from './format-volume.ts';

/**
 * Writes a volume that is in that unit already.
 *
 * @example formatInUnit(0.04, 'L'); // '40 mL'
 * @example formatInUnit(5.07, 'US qt'); // '5.07 US qt'
 */
export function formatInUnit(volume: number, unit: VolumeUnit): string {
  return unit === 'L' ? formatVolume(volume) : `${formatFigure(volume, { decimals: 2 })} ${unit}`;
}
