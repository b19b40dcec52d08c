/** The graduation of a scale. */
export interface ScaleTicks {
  readonly step: number;
  readonly ticks: readonly number[];
  readonly minorTicks: readonly number[];
}

interface TickSpec {
  readonly low: number;
  readonly high: number;
  /** At most this many labelled ticks; below two counts as two. */
  readonly maxCount: number;
  /** Steps to prefer, ascending, such as the 1, 2, 5, 10, 15, 30 of a clock. */
  readonly steps?: readonly number[];
}

const MANTISSAS = [1, 2, 5, 10] as const;
const MOST_TICKS = 400;
/** Below this share of the values themselves a span is noise of the floating point. */
const LEAST_SHARE = 1e-9;
const LEAST_SPAN = 1e-9;
/** The next round step beyond this may not be a number any more. */
const LARGEST_STEP = 1e307;

const niceStep = (least: number): number => {
  const power = 10 ** Math.floor(Math.log10(least));
  const mantissa = MANTISSAS.find((candidate) => candidate * power >= least * (1 - 1e-9)) ?? 10;
  return mantissa * power;
};

const minorParts = (step: number): number => {
  const mantissa = Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9));
  return mantissa === 2 ? 4 : 5;
};

const firstMultiple = (step: number, low: number): number => Math.ceil(low / step - 1e-9);
const countMultiples = (step: number, { low, high }: { low: number; high: number }): number =>
  Math.max(0, Math.floor(high / step + 1e-9) - firstMultiple(step, low) + 1);

const multiples = (step: number, range: { low: number; high: number }): number[] => {
  const first = firstMultiple(step, range.low);
  const count = Math.min(MOST_TICKS, countMultiples(step, range));
  return Array.from({ length: count }, (_, index) => Number(((first + index) * step).toPrecision(12)) + 0);
};

const chooseStep = (range: { low: number; high: number }, maxCount: number, steps: readonly number[]): number => {
  const size = Math.max(Math.abs(range.low), Math.abs(range.high));
  const quarterSpan = Math.max(range.high / 4 - range.low / 4, (size * LEAST_SHARE) / 4, LEAST_SPAN / 4);
  const fits = (step: number): boolean => countMultiples(step, range) <= maxCount;
  const given = steps.find((step) => step >= (quarterSpan / maxCount) * 2 && fits(step));
  if (given !== undefined) return given;
  let step = niceStep(Math.min((quarterSpan / maxCount) * 4, Number.MAX_VALUE / 16));
  while (!fits(step) && step < LARGEST_STEP) step = niceStep(step * 1.5);
  return step;
};

/**
 * Graduates a scale in round steps (1, 2 or 5 times a power of ten, or the steps given), the way a rule is marked.
 * All ticks lie within `low` to `high`; there are at most `maxCount` labelled ones.
 *
 * @example scaleTicks({ low: 0, high: 103, maxCount: 6 }).ticks; // [0, 20, 40, 60, 80, 100]
 */
export function scaleTicks({ low, high, maxCount, steps = [] }: TickSpec): ScaleTicks {
  const range = { low: Math.min(low, high), high: Math.max(low, high) };
  const step = chooseStep(range, Math.max(2, Math.floor(maxCount)), steps);
  const ticks = multiples(step, range);
  const labelled = new Set(ticks);
  return { step, ticks, minorTicks: multiples(step / minorParts(step), range).filter((value) => !labelled.has(value)) };
}
