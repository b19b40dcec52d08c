const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/**
 * Density of the standard normal distribution.
 *
 * @param z - deviations from the mean
 * @example normalDensity(0) // 0.3989422804014327
 */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_TWO_PI;
}
