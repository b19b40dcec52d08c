import { IF97_REGION4 as N } from '../data/if97-region4.ts';

/** The formulation holds from the triple point to the critical point. */
export const SATURATION_LIMITS = { leastK: 273.15, mostK: 647.096, leastMPa: 611.213e-6, mostMPa: 22.064 } as const;

/**
 * Vapour pressure of water.
 *
 * Source: IAPWS R7-97(2012), equation 30.
 *
 * @param tempK Temperature in K, 273.15 to 647.096
 * @returns Pressure in MPa
 * @example saturationMPa(300) // 0.00353658941
 */
export function saturationMPa(tempK: number): number {
  const theta = tempK + N.n9 / (tempK - N.n10);
  const a = theta * theta + N.n1 * theta + N.n2;
  const b = N.n3 * theta * theta + N.n4 * theta + N.n5;
  const c = N.n6 * theta * theta + N.n7 * theta + N.n8;
  return ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4;
}

/**
 * Boiling temperature of water.
 *
 * Source: IAPWS R7-97(2012), equation 31.
 *
 * @param pressureMPa Pressure in MPa, 0.000611213 to 22.064
 * @returns Temperature in K
 * @example saturationK(0.1) // 372.755919
 */
export function saturationK(pressureMPa: number): number {
  const beta = pressureMPa ** 0.25;
  const e = beta * beta + N.n3 * beta + N.n6;
  const f = N.n1 * beta * beta + N.n4 * beta + N.n7;
  const g = N.n2 * beta * beta + N.n5 * beta + N.n8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  return (N.n10 + d - Math.sqrt((N.n10 + d) ** 2 - 4 * (N.n9 + N.n10 * d))) / 2;
}
