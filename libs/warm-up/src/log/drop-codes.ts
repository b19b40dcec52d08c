import { type DropAccount } from './dropped-rows.ts';
import { type Quantity } from './quantity.ts';

/** Figures that loggers write for 'no answer': the ends of a byte, a signed byte or a word, and nines. */
const CODES = new Set([127, 255, 215, -40, 65_535, 32_767, -1, -999, 999, 9999]);
const FAR_K = 15;
const FIRST_WRONG_K = 10;
const FOLLOWING = 5;
const TEMPERATURES: ReadonlySet<Quantity> = new Set(['coolant', 'intake', 'ambient']);

/**
 * Takes out codes that stand away from the readings around them, in place. A temperature that passes through 127 °C step by step stays, and
 * so does a column that holds nothing else.
 */
export function dropCodes(values: Float64Array, quantity: Quantity, drop: (row: number, reason: string) => void): void {
  if (!TEMPERATURES.has(quantity)) return;
  const codes: number[] = [];
  let others = 0;
  for (let row = 0; row < values.length; row += 1) {
    const value = values[row] ?? Number.NaN;
    if (CODES.has(value)) codes.push(row);
    else if (!Number.isNaN(value)) others += 1;
  }
  if (codes.length === 0 || others === 0) return;
  const before = nearest(values, 1);
  const after = nearest(values, -1);
  for (const row of codes) {
    const value = values[row] ?? 0;
    const isNear = (near: number | undefined): boolean => near !== undefined && Math.abs(near - value) <= FAR_K;
    if (isNear(before[row]) || isNear(after[row])) continue;
    values[row] = Number.NaN;
    drop(row, `${quantity === 'coolant' ? '' : `${quantity}: `}${value} stands for 'no answer'`);
  }
}

/** Value of the nearest reading that is no code, looking back (1) or ahead (−1). */
function nearest(values: Float64Array, direction: 1 | -1): Float64Array {
  const size = values.length;
  const out = new Float64Array(size);
  let last = Number.NaN;
  for (let step = 0; step < size; step += 1) {
    const row = direction === 1 ? step : size - 1 - step;
    const value = values[row] ?? Number.NaN;
    if (!Number.isNaN(value) && !CODES.has(value)) last = value;
    out[row] = last;
  }
  return out;
}

/** An intake sensor's first answer is sometimes another channel's: taken out, in place, when it is far from the ones that follow. */
export function dropFirstWrong(values: Float64Array, lineOf: readonly number[], dropped: DropAccount): void {
  const rows: number[] = [];
  for (let row = 0; row < values.length && rows.length <= FOLLOWING; row += 1) if (!Number.isNaN(values[row] ?? Number.NaN)) rows.push(row);
  const [first, ...next] = rows;
  if (first === undefined || next.length < FOLLOWING) return;
  const middle = next.map((row) => values[row] ?? 0).sort((left, right) => left - right)[Math.floor(FOLLOWING / 2)] ?? 0;
  const value = values[first] ?? 0;
  if (Math.abs(value - middle) <= FIRST_WRONG_K) return;
  values[first] = Number.NaN;
  dropped.add(`intake: first value ${value} is far from the next ones`, lineOf[first] ?? 0);
}
