/** Running sum over time (trapezium rule) of `rate`, per second, on even steps. */
export function accumulate(size: number, stepS: number, rate: (index: number) => number): Float64Array {
  const out = new Float64Array(size);
  let sum = 0;
  let before = size > 0 ? rate(0) : 0;
  for (let index = 1; index < size; index += 1) {
    const now = rate(index);
    sum += 0.5 * (before + now) * stepS;
    out[index] = sum;
    before = now;
  }
  return out;
}
