import { type Sample } from '../types/sample.ts';

/** What was left out of a log before it was read as a warm-up, and how often. */
interface Dropped {
  reason: 'not a number' | 'outside what a sensor can say' | 'time runs backwards' | 'same time twice' | 'glitch';
  count: number;
}

/** A log in columns, in rising time. NaN stands for 'not logged'. */
export interface CleanLog {
  timeS: Float64Array;
  coolantC: Float64Array;
  speedKmh: Float64Array;
  rpm: Float64Array;
  loadPercent: Float64Array;
  intakeC: Float64Array;
  ambientC: Float64Array;
  airFlowGps: Float64Array;
  count: number;
  dropped: Dropped[];
  /** Readings at the very end of the sensor's range, which is what a broken wire gives. */
  endOfRange: number;
}

const LOWEST_C = -40;
const HIGHEST_C = 215;

const take = (value: number | undefined, low: number, high: number): number =>
  value === undefined || !(value >= low && value <= high) ? Number.NaN : value;

/**
 * Puts samples in columns: drops what is no reading, keeps the time rising, averages readings that share a time.
 * Hand-written because a log has up to 36,000 rows.
 */
export function cleanLog(samples: readonly Sample[]): CleanLog {
  const size = samples.length;
  const column = (): Float64Array => new Float64Array(size);
  const log = {
    timeS: column(),
    coolantC: column(),
    speedKmh: column(),
    rpm: column(),
    loadPercent: column(),
    intakeC: column(),
    ambientC: column(),
    airFlowGps: column(),
  };
  const lost = { number: 0, range: 0, backwards: 0, twice: 0 };
  let endOfRange = 0;
  let count = 0;
  let sharing = 1;
  for (const sample of samples) {
    const { timeS, coolantC } = sample;
    if (!Number.isFinite(timeS) || !Number.isFinite(coolantC)) {
      lost.number += 1;
      continue;
    }
    if (coolantC <= LOWEST_C || coolantC >= HIGHEST_C) {
      endOfRange += 1;
      lost.range += 1;
      continue;
    }
    const last = count > 0 ? (log.timeS[count - 1] ?? 0) : Number.NEGATIVE_INFINITY;
    if (timeS < last) {
      lost.backwards += 1;
      continue;
    }
    if (timeS === last) {
      lost.twice += 1;
      sharing += 1;
      const before = log.coolantC[count - 1] ?? coolantC;
      log.coolantC[count - 1] = before + (coolantC - before) / sharing;
      continue;
    }
    sharing = 1;
    log.timeS[count] = timeS;
    log.coolantC[count] = coolantC;
    log.speedKmh[count] = take(sample.speedKmh, 0, 320);
    log.rpm[count] = take(sample.rpm, 0, 12_000);
    log.loadPercent[count] = take(sample.loadPercent, 0, 150);
    log.intakeC[count] = take(sample.intakeC, -39, 120);
    log.ambientC[count] = take(sample.ambientC, -39, 60);
    log.airFlowGps[count] = take(sample.airFlowGps, 0, 650);
    count += 1;
  }
  const dropped: Dropped[] = [];
  if (lost.number) dropped.push({ reason: 'not a number', count: lost.number });
  if (lost.range) dropped.push({ reason: 'outside what a sensor can say', count: lost.range });
  if (lost.backwards) dropped.push({ reason: 'time runs backwards', count: lost.backwards });
  if (lost.twice) dropped.push({ reason: 'same time twice', count: lost.twice });
  return { ...log, count, dropped, endOfRange };
}
