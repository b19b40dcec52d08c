/** Student's t, two-sided 95 %, for 1 to 30 degrees of freedom. Standard table, from memory; the test computes it again. */
const T_95: readonly number[] = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131, 2.12, 2.11, 2.101, 2.093, 2.086,
  2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
];

/** The factor for a 95 % range; above 30 degrees of freedom that of 30, which is on the safe side. */
export function t95(degreesOfFreedom: number): number {
  return T_95[Math.min(degreesOfFreedom, T_95.length) - 1] ?? Infinity;
}
