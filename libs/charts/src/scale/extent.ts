/**
 * Widens a range until it holds all the values; long logs are walked, not spread into arguments.
 *
 * @example extent([3, 9], { low: 0, high: 5 }); // { low: 0, high: 9 }
 */
export function extent(values: readonly number[], start: { low: number; high: number }): { low: number; high: number } {
  let { low, high } = start;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { low, high };
}
