import { extent } from '../scale/extent.ts';
import { linearScale } from '../scale/linear-scale.ts';
import { scaleTicks, type ScaleTicks } from '../scale/scale-ticks.ts';
import { type CoolingCurveData } from './cooling-data.ts';

/** Where everything of the curve lies. */
export interface CoolingFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly xOf: (clockMin: number) => number;
  readonly yOf: (tempC: number) => number;
  readonly clock: ScaleTicks;
  readonly temps: ScaleTicks;
  readonly heightPx: number;
}

const LEFT_PX = 48;
const RIGHT_PX = 22;
/** Keeps the first ring off the axis. */
const START_GAP_PX = 12;
const TOP_PX = 34;
const PLOT_PX = 210;
const BELOW_PX = 42;
const CLOCK_STEPS_MIN = [5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440];
const LEAST_SPAN_MIN = 60;
const EXAMPLE_START_MIN = 480;
const EXAMPLE_END_MIN = 720;

/** Lays out the axes for the readings, the estimate and now. */
export function coolingFrame({ readings, estimate, limitC, nowMin }: CoolingCurveData, widthPx: number): CoolingFrame {
  const points = [...readings, ...estimate];
  const times = [...points.map(({ clockMin }) => clockMin), ...(nowMin === undefined ? [] : [nowMin])];
  const first = times[0] ?? EXAMPLE_START_MIN;
  const span = extent(times, { low: first, high: first + (points.length === 0 ? EXAMPLE_END_MIN - EXAMPLE_START_MIN : LEAST_SPAN_MIN) });
  const reach = extent(
    points.map(({ tempC }) => tempC),
    { low: Math.min(0, limitC - 10), high: limitC * 1.3 + 10 },
  );
  const [left, right, top, bottom] = [LEFT_PX, widthPx - RIGHT_PX, TOP_PX, TOP_PX + PLOT_PX];
  return {
    left,
    right,
    top,
    bottom,
    xOf: linearScale({ ...span, start: left + START_GAP_PX, end: right }),
    yOf: linearScale({ low: reach.low, high: reach.high, start: bottom, end: top + 14 }),
    clock: scaleTicks({ ...span, maxCount: (right - left) / 68, steps: CLOCK_STEPS_MIN }),
    temps: scaleTicks({ ...reach, maxCount: 6 }),
    heightPx: bottom + BELOW_PX,
  };
}
