import { NEWTON_METRES_PER_POUND_FOOT } from './exact-factors.ts';

/**
 * A torque in pound-force feet.
 *
 * @param torqueNm Torque in Nm
 * @returns The same torque in lbf·ft
 * @example newtonMetresToPoundFeet(1.3558179483314004) // 1
 */
export function newtonMetresToPoundFeet(torqueNm: number): number {
  return torqueNm / NEWTON_METRES_PER_POUND_FOOT;
}

/**
 * A torque in newton metres.
 *
 * @param torqueLbfFt Torque in lbf·ft
 * @returns The same torque in Nm
 * @example poundFeetToNewtonMetres(10) // 13.558179483314003
 */
export function poundFeetToNewtonMetres(torqueLbfFt: number): number {
  return torqueLbfFt * NEWTON_METRES_PER_POUND_FOOT;
}
