import { type Grid } from '../grid/grid.ts';
import { type FallWithSpeed } from '../types/analysis.ts';

const SLOW_KMH = 15;
const FAST_KMH = 45;
/** Pace over 40 s; the speed that caused it is taken a little earlier because the block passes heat on late. */
const OVER_S = 40;
const DELAY_S = 15;
const LEAST_S = 90;
const NOTICEABLE_C_PER_MIN = 0.3;

/** Compares the pace of warming in slow and in quick driving from step `from` on; null without enough of both. */
export function fallWithSpeed(grid: Grid, from: number): FallWithSpeed | null {
  const { speedKmh, smoothC, stepS, size } = grid;
  if (!speedKmh) return null;
  const half = Math.max(1, Math.round(OVER_S / 2 / stepS));
  const delay = Math.round(DELAY_S / stepS);
  const slow = { sum: 0, count: 0 };
  const fast = { sum: 0, count: 0 };
  for (let index = from + half; index < size - half; index += 1) {
    const speed = speedKmh[Math.max(0, index - delay)] ?? 0;
    const group = speed <= SLOW_KMH ? slow : speed >= FAST_KMH ? fast : null;
    if (!group) continue;
    group.sum += ((smoothC[index + half] ?? 0) - (smoothC[index - half] ?? 0)) / ((2 * half * stepS) / 60);
    group.count += 1;
  }
  if (Math.min(slow.count, fast.count) * stepS < LEAST_S) return null;
  const slowCPerMin = slow.sum / slow.count;
  const fastCPerMin = fast.sum / fast.count;
  return { slowCPerMin, fastCPerMin, falls: fastCPerMin < -NOTICEABLE_C_PER_MIN / 2 && fastCPerMin < slowCPerMin - NOTICEABLE_C_PER_MIN };
}
