import { MILLIMETRES_PER_INCH } from './exact-factors.ts';

/**
 * A length in inches.
 *
 * @param lengthMm Length in mm
 * @returns The same length in inches of 25.4 mm
 * @example millimetresToInches(54) // 2.125984251968504
 */
export function millimetresToInches(lengthMm: number): number {
  return lengthMm / MILLIMETRES_PER_INCH;
}

/**
 * A length in millimetres.
 *
 * @param lengthIn Length in inches
 * @returns The same length in mm
 * @example inchesToMillimetres(2) // 50.8
 */
export function inchesToMillimetres(lengthIn: number): number {
  return lengthIn * MILLIMETRES_PER_INCH;
}
