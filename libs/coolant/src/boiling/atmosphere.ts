/** The standard atmosphere's lowest layer, which every road lies in. */
export const ATMOSPHERE_LIMITS_M = { least: -2000, most: 11000 } as const;

const SEA_LEVEL_KPA = 101.325;
const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
/** Standard gravity × molar mass of air ÷ (gas constant × lapse rate), with the constants of the 1976 standard. */
const EXPONENT = (9.80665 * 0.0289644) / (8.31432 * LAPSE_K_PER_M);

/**
 * Air pressure at an altitude in the standard atmosphere. The weather moves it by a few kPa.
 *
 * Source: US Standard Atmosphere 1976, the same as ISO 2533 in this layer; geopotential altitude.
 *
 * @param altitudeM Altitude above sea level in m, −2000 to 11 000
 * @returns Absolute pressure in kPa
 * @example atmosphereKPa(0) // 101.325
 */
export function atmosphereKPa(altitudeM: number): number {
  return SEA_LEVEL_KPA * (1 - (LAPSE_K_PER_M * altitudeM) / SEA_LEVEL_K) ** EXPONENT;
}
