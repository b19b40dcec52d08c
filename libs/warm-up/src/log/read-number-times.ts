import { type ReadTimes } from './read-clock-column.ts';
import { SECONDS_IN, type TimeUnit } from './units.ts';

/** Steps and lengths that a log of one drive can have. */
const STEP_S = { least: 0.02, most: 120, mostInLongLogs: 30 };
const LENGTH_S = { least: 60, most: 6 * 3600 };
const LONG_LOG_ROWS = 100;
const DAY_S = 86_400;
/** Three thousand years: no clock shows more, so what does is no time. */
const MOST_S = 1e11;
const LATE_EVENING_S = 80_000;
/** Times since 1970 in seconds, ms and µs are ten, thirteen and sixteen digits long. */
const SINCE_1970: readonly { from: number; to: number; unit: TimeUnit }[] = [
  { from: 1e9, to: 4e9, unit: 's' },
  { from: 1e12, to: 4e12, unit: 'ms' },
  { from: 1e15, to: 4e15, unit: 'µs' },
];
const LEAST_ROWS_TO_TELL = 20;
const DISTINCT_SHARE = 50;

/** Turns numeric times into seconds; `unit` null lets the steps tell it, if only one unit gives a drive that can be. */
export function readNumberTimes(raw: Float64Array, unit: TimeUnit | null): ReadTimes & { unit?: TimeUnit; ask?: boolean } {
  const known = raw.filter((value) => !Number.isNaN(value));
  if (known.length < 2) return { problem: 'holds no readable times' };
  if (known.length >= LEAST_ROWS_TO_TELL && changes(known) <= known.length / DISTINCT_SHARE) {
    return { problem: `stands still at ${known[0] ?? 0}: all times have become equal, as when a spreadsheet has rounded them` };
  }
  const found = unit ?? unitBySteps(known);
  if (found === null) return { problem: 'has no unit, and its steps fit more than one or none', ask: true };
  const factor = SECONDS_IN[found];
  let added = 0;
  let last = Number.NEGATIVE_INFINITY;
  let midnights = 0;
  const timesS = raw.map((value) => {
    const readS = value * factor;
    if (!(Math.abs(readS) <= MOST_S)) return Number.NaN;
    let timeS = readS + added;
    if (last - timeS > 0.75 * DAY_S && last - added > LATE_EVENING_S && last - added <= DAY_S) {
      added += DAY_S;
      timeS += DAY_S;
      midnights += 1;
    }
    last = timeS;
    return timeS;
  });
  return { timesS, unit: found, note: midnights > 0 ? 'the seconds of the day pass midnight' : null };
}

function changes(values: Float64Array): number {
  let count = 0;
  for (let index = 1; index < values.length; index += 1) if (values[index] !== values[index - 1]) count += 1;
  return count;
}

function unitBySteps(values: Float64Array): TimeUnit | null {
  const first = values[0] ?? 0;
  const since = SINCE_1970.find(({ from, to }) => first >= from && first < to);
  if (since) return since.unit;
  const steps = values
    .map((value, index) => value - (values[index - 1] ?? value))
    .filter((step) => step > 0)
    .sort();
  const step = steps[Math.floor(steps.length / 2)] ?? 0;
  const [low, high] = spanOf(values);
  const span = high - low;
  const mostStepS = values.length >= LONG_LOG_ROWS ? STEP_S.mostInLongLogs : STEP_S.most;
  const fitting = (['µs', 'ms', 's', 'min', 'h', 'days'] as const).filter((unit) => {
    const stepS = step * SECONDS_IN[unit];
    const spanS = span * SECONDS_IN[unit];
    return stepS >= STEP_S.least && stepS <= mostStepS && spanS >= LENGTH_S.least && spanS <= LENGTH_S.most;
  });
  return fitting.length === 1 ? (fitting[0] ?? null) : null;
}

function spanOf(values: Float64Array): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}
