import { type Sample } from './types/sample.ts';

/** A reading for a drawing; minutes from the first one. */
export interface ChartPoint {
  minute: number;
  tempC: number;
  speedKmh: number | null;
}

/**
 * Thins a log to a number of points that a drawing can show: the mean of equal slices of readings, so that whole degrees turn into a curve.
 *
 * @example thinForChart(samples, 300).length // at most 300
 */
export function thinForChart(samples: readonly Sample[], mostPoints: number): ChartPoint[] {
  const slice = Math.max(1, Math.ceil(samples.length / mostPoints));
  const startS = samples[0]?.timeS ?? 0;
  const points: ChartPoint[] = [];
  for (let from = 0; from < samples.length; from += slice) {
    const part = samples.slice(from, from + slice);
    const speeds = part.flatMap(({ speedKmh }) => speedKmh ?? []);
    points.push({
      minute: mean(part.map(({ timeS }) => timeS - startS)) / 60,
      tempC: mean(part.map(({ coolantC }) => coolantC)),
      speedKmh: speeds.length > 0 ? mean(speeds) : null,
    });
  }
  return points;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
