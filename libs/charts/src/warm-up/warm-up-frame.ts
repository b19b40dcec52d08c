import { linearScale } from '../scale/linear-scale.ts';
import { extent } from '../scale/extent.ts';
import { scaleTicks, type ScaleTicks } from '../scale/scale-ticks.ts';
import { BAND_HALF_WIDTH_C, type WarmUpData, type WarmUpLog } from './warm-up-data.ts';

/** Where everything of the chart lies. */
export interface WarmUpFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly isNarrow: boolean;
  readonly typePx: number;
  readonly xOf: (minute: number) => number;
  readonly yOf: (tempC: number) => number;
  readonly minutes: ScaleTicks;
  readonly temps: ScaleTicks;
  readonly band: { readonly low: number; readonly high: number } | null;
  /** The strip for the speeds; null when there are none. */
  readonly speed: { readonly top: number; readonly bottom: number; readonly highKmh: number } | null;
  readonly axisY: number;
  readonly heightPx: number;
}

const MINUTE_STEPS = [0.5, 1, 2, 5, 10, 15, 20, 30, 60, 120, 240];
const LEAST_MINUTES = 5;
const EXAMPLE_MINUTES = 20;
const KNEE_ROW_PX = 24;
const AXIS_PX = 58;
const SPEED_PX = 62;
const SPEED_GAP_PX = 26;

const logsOf = (data: WarmUpData): WarmUpLog[] => [data.before, data.after].filter((log) => log !== null);

const highestSpeed = (data: WarmUpData): number | null => {
  if (data.hasSpeed === false) return null;
  const speeds = logsOf(data).flatMap(({ samples }) =>
    samples.flatMap(({ speedKmh }) => (speedKmh === null || speedKmh === undefined ? [] : [speedKmh])),
  );
  return speeds.length === 0 ? null : extent(speeds, { low: 0, high: 50 }).high;
};

const plotHeight = (widthPx: number): number => (widthPx <= 480 ? 230 : Math.max(240, Math.min(470, widthPx * 0.46)));

/** Lays out axes and strips for the data. */
export function warmUpFrame(data: WarmUpData, widthPx: number): WarmUpFrame {
  const isNarrow = widthPx <= 480;
  const typePx = isNarrow ? 14 : 16;
  const logs = logsOf(data);
  const left = isNarrow ? 46 : 52;
  const right = widthPx - (isNarrow ? 10 : 14);
  const top = 14 + KNEE_ROW_PX * logs.filter(({ knee }) => knee !== undefined && knee !== null).length;
  const speedKmh = highestSpeed(data);
  const below = AXIS_PX + (speedKmh === null ? 0 : SPEED_PX + SPEED_GAP_PX);
  const bottom = data.heightPx === undefined ? top + plotHeight(widthPx) : Math.max(top + 120, data.heightPx - below);
  const half = data.bandHalfWidthC ?? BAND_HALF_WIDTH_C;
  const band = data.nominalC === null ? null : { low: data.nominalC - half, high: data.nominalC + half };
  const temps = logs.flatMap(({ samples, knee }) => [
    ...samples.map(({ tempC }) => tempC),
    ...(knee ? [knee.tempC - knee.halfWidthC, knee.tempC + knee.halfWidthC] : []),
  ]);
  const reach = extent(band === null ? temps : [...temps, band.low - 2, band.high + 4], { low: 0, high: 104 });
  const time = extent(
    logs.flatMap(({ samples }) => samples.map(({ minute }) => minute)),
    { low: 0, high: logs.some(({ samples }) => samples.length > 0) ? LEAST_MINUTES : EXAMPLE_MINUTES },
  );
  const speedTop = bottom + SPEED_GAP_PX;
  const axisY = speedKmh === null ? bottom : speedTop + SPEED_PX;
  const speedTicks = speedKmh === null ? null : scaleTicks({ low: 0, high: speedKmh * 1.3, maxCount: 4 });
  return {
    left,
    right,
    top,
    bottom,
    isNarrow,
    typePx,
    xOf: linearScale({ ...time, start: left, end: right }),
    yOf: linearScale({ ...reach, start: bottom, end: top }),
    minutes: scaleTicks({ ...time, maxCount: (right - left) / (isNarrow ? 48 : 90), steps: MINUTE_STEPS }),
    temps: scaleTicks({ ...reach, maxCount: Math.max(6, (bottom - top) / 60) }),
    band,
    speed:
      speedTicks === null ? null : { top: speedTop, bottom: axisY - 6, highKmh: Math.max(speedKmh ?? 0, ...speedTicks.ticks.slice(-1)) },
    axisY,
    heightPx: axisY + AXIS_PX,
  };
}
