import { DEFAULT_TIME_CONSTANT_MIN } from '#libs/coolant';
import { t95 } from './student-t.ts';

/** One engine standing, read several times in air of one temperature. */
export interface CoolingRun {
  readonly airC: number;
  readonly readings: readonly { readonly atMs: number; readonly tempC: number }[];
}

export interface LearntCooling {
  readonly timeConstantMs: number;
  /** 95 % range; of the value from memory a guess of half to twice. */
  readonly lowMs: number;
  readonly highMs: number;
  readonly source: 'learnt' | 'from-memory';
  /** How many readings it rests on. */
  readonly readings: number;
}

/** Nearer to the air than this a reading is mostly noise. */
const LEAST_ABOVE_AIR_K = 2;
const MINUTE_MS = 60_000;

interface Point {
  readonly t: number;
  readonly y: number;
  readonly weight: number;
}

/**
 * The workshop's time constant of a standing engine, from its own readings: one common slope of ln(T − air) over time, each run
 * with its own start, by least squares; readings weigh by (T − air)², because an error of one kelvin matters more near the air.
 * With too few readings, or none that cool, the value from memory with a wide range.
 *
 * @param runs Readings per run, °C and ms
 * @returns Time constant with its 95 % range, ms
 * @example learnCooling([]).timeConstantMs // 7200000, from memory
 */
export function learnCooling(runs: readonly CoolingRun[]): LearntCooling {
  const usable = runs.map(toPoints).filter((points) => points.length >= 2);
  const count = usable.reduce((sum, points) => sum + points.length, 0);
  const freedom = count - usable.length - 1;
  if (freedom < 1) return FROM_MEMORY;
  const centred = usable.flatMap(centre);
  const sxx = total(centred, ({ t, weight }) => weight * t * t);
  const slope = total(centred, ({ t, y, weight }) => weight * t * y) / sxx;
  const variance = total(centred, ({ t, y, weight }) => weight * (y - slope * t) ** 2) / freedom;
  const spread = t95(freedom) * Math.sqrt(variance / sxx);
  if (!(slope + spread < 0)) return FROM_MEMORY;
  return {
    timeConstantMs: -1 / slope,
    lowMs: -1 / (slope - spread),
    highMs: -1 / (slope + spread),
    source: 'learnt',
    readings: count,
  };
}

const FROM_MEMORY: LearntCooling = {
  timeConstantMs: DEFAULT_TIME_CONSTANT_MIN * MINUTE_MS,
  lowMs: (DEFAULT_TIME_CONSTANT_MIN * MINUTE_MS) / 2,
  highMs: DEFAULT_TIME_CONSTANT_MIN * MINUTE_MS * 2,
  source: 'from-memory',
  readings: 0,
};

function toPoints({ airC, readings }: CoolingRun): readonly Point[] {
  return readings
    .filter(({ atMs, tempC }) => Number.isFinite(atMs) && tempC - airC >= LEAST_ABOVE_AIR_K && Number.isFinite(tempC - airC))
    .map(({ atMs, tempC }) => ({ t: atMs, y: Math.log(tempC - airC), weight: (tempC - airC) ** 2 }));
}

function centre(points: readonly Point[]): readonly Point[] {
  const weight = total(points, (point) => point.weight);
  const meanT = total(points, (point) => point.weight * point.t) / weight;
  const meanY = total(points, (point) => point.weight * point.y) / weight;
  return points.map((point) => ({ ...point, t: point.t - meanT, y: point.y - meanY }));
}

function total(points: readonly Point[], value: (point: Point) => number): number {
  return points.reduce((sum, point) => sum + value(point), 0);
}
