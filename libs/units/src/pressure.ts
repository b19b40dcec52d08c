import { KPA_PER_BAR, KPA_PER_PSI } from './exact-factors.ts';

/**
 * A pressure in pounds-force per square inch. Gauge stays gauge and absolute stays absolute.
 *
 * @param pressureKPa Pressure in kPa
 * @returns The same pressure in psi
 * @example kPaToPsi(6.894757293168361) // 1
 */
export function kPaToPsi(pressureKPa: number): number {
  return pressureKPa / KPA_PER_PSI;
}

/**
 * A pressure in kilopascals. Gauge stays gauge and absolute stays absolute.
 *
 * @param pressurePsi Pressure in psi
 * @returns The same pressure in kPa
 * @example psiToKPa(15) // 103.42135939752542
 */
export function psiToKPa(pressurePsi: number): number {
  return pressurePsi * KPA_PER_PSI;
}

/**
 * A pressure in bar.
 *
 * @param pressureKPa Pressure in kPa
 * @returns The same pressure in bar
 * @example kPaToBar(140) // 1.4
 */
export function kPaToBar(pressureKPa: number): number {
  return pressureKPa / KPA_PER_BAR;
}

/**
 * A pressure in kilopascals, from bar.
 *
 * @param pressureBar Pressure in bar
 * @returns The same pressure in kPa
 * @example barToKPa(1.4) // 140
 */
export function barToKPa(pressureBar: number): number {
  return pressureBar * KPA_PER_BAR;
}
