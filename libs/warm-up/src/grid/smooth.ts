/** Moving average over `reach` steps to either side, shorter at the ends. */
export function smooth(values: Float64Array, reach: number): Float64Array {
  const size = values.length;
  const sums = new Float64Array(size + 1);
  for (let index = 0; index < size; index += 1) sums[index + 1] = (sums[index] ?? 0) + (values[index] ?? 0);
  const out = new Float64Array(size);
  for (let index = 0; index < size; index += 1) {
    const side = Math.min(reach, index, size - 1 - index);
    out[index] = ((sums[index + side + 1] ?? 0) - (sums[index - side] ?? 0)) / (2 * side + 1);
  }
  return out;
}
