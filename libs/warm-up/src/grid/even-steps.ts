/** A channel with its times, and the even steps it is to be laid on; `firstS` is the middle of the first step. */
export interface Laying {
  timeS: Float64Array;
  values: Float64Array;
  count: number;
  firstS: number;
  stepS: number;
  size: number;
  /** Room for `count` times and readings, used again for every channel: long logs otherwise keep the memory manager busy. */
  room: { times: Float64Array; readings: Float64Array };
}

/** A channel that answered in less than this share of the readings is treated as not logged. */
const LEAST_SHARE = 0.1;

/** Lays a channel on even steps: the mean where a step holds several readings, a straight line between readings elsewhere; null if hardly logged. */
export function evenSteps({ timeS, values, count, firstS, stepS, size, room }: Laying): Float64Array | null {
  const { times, readings } = room;
  let known = 0;
  for (let index = 0; index < count; index += 1) {
    const value = values[index] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    times[known] = timeS[index] ?? 0;
    readings[known] = value;
    known += 1;
  }
  if (known < 2 || known < count * LEAST_SHARE) return null;
  const out = new Float64Array(size);
  let next = 0;
  for (let step = 0; step < size; step += 1) {
    const middleS = firstS + step * stepS;
    const endS = middleS + stepS / 2;
    let sum = 0;
    let held = 0;
    while (next < known && (times[next] ?? 0) < endS) {
      sum += readings[next] ?? 0;
      held += 1;
      next += 1;
    }
    out[step] = held > 1 ? sum / held : between({ times, readings, known, next }, middleS);
  }
  return out;
}

interface Known {
  times: Float64Array;
  readings: Float64Array;
  known: number;
  next: number;
}

/** Straight line through the readings on either side of `atS`; `next` is the first reading after the step. */
function between({ times, readings, known, next }: Known, atS: number): number {
  let right = next;
  while (right > 0 && (times[right - 1] ?? 0) > atS) right -= 1;
  if (right === 0) return readings[0] ?? 0;
  if (right >= known) return readings[known - 1] ?? 0;
  const fromS = times[right - 1] ?? 0;
  const from = readings[right - 1] ?? 0;
  return from + (((readings[right] ?? 0) - from) * (atS - fromS)) / ((times[right] ?? 0) - fromS);
}
