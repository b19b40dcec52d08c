/**
 * Widens a range to whole multiples of a step, so that the scale starts and ends on a mark.
 *
 * @example niceRange({ low: 3, high: 91, step: 20 }); // { low: 0, high: 100 }
 */
export function niceRange({ low, high, step }: { low: number; high: number; step: number }): { low: number; high: number } {
  const down = Math.floor(low / step) * step;
  const up = Math.ceil(high / step) * step;
  return { low: Number.isFinite(down) ? down : low, high: Number.isFinite(up) ? up : high };
}
