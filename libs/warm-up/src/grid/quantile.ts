/** Value below which the given share of the numbers lies; NaN for none. */
export function quantile(values: Float64Array | readonly number[], share: number): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
}
