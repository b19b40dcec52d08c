import { LITRES_PER_US_QUART } from './exact-factors.ts';

/**
 * A volume in US liquid quarts.
 *
 * @param volumeL Volume in L
 * @returns The same volume in US quarts of 0.946352946 L
 * @example litresToUsQuarts(0.946352946) // 1
 */
export function litresToUsQuarts(volumeL: number): number {
  return volumeL / LITRES_PER_US_QUART;
}

/**
 * A volume in litres.
 *
 * @param volumeQt Volume in US liquid quarts
 * @returns The same volume in L
 * @example usQuartsToLitres(4) // 3.785411784, one US gallon
 */
export function usQuartsToLitres(volumeQt: number): number {
  return volumeQt * LITRES_PER_US_QUART;
}
