import { type ComparisonReading } from './comparison.types.ts';

/** The readings of one object, as one figure. */
export interface PooledReading {
  readonly value: number;
  readonly standardUncertainty: number;
  /** The single readings lie further apart than their uncertainties explain. */
  readonly isTorn: boolean;
}

const TORN_AT = 3;

/**
 * Makes one figure of several readings of one feature on one object, each weighted by 1/u². Readings of different places
 * (the removed part, the recess) are of different objects and stay apart.
 *
 * Pooling is exact for the ranking: the part's own deviation from its nominal figure is the same in all of them, so three
 * readings of one flange don't count as three flanges.
 *
 * @param readings - of one number feature
 * @returns one pooled reading per place, in the order of first mention
 * @example poolReadings([{ key: 'd', value: 54.1, standardUncertainty: 0.1 }, { key: 'd', value: 53.9, standardUncertainty: 0.1 }])
 * // [{ value: 54, standardUncertainty: 0.0707…, isTorn: false }]
 */
export function poolReadings(readings: readonly ComparisonReading[]): PooledReading[] {
  const places = new Map<string, { value: number; u: number }[]>();
  for (const { value, standardUncertainty = 0, measuredAt = '' } of readings) {
    if (typeof value !== 'number') continue;
    places.set(measuredAt, [...(places.get(measuredAt) ?? []), { value, u: standardUncertainty }]);
  }
  return [...places.values()].map(poolOne);
}

function poolOne(all: readonly { value: number; u: number }[]): PooledReading {
  const exact = all.filter(({ u }) => u === 0);
  const used = exact.length > 0 ? exact : all;
  const least = Math.min(...used.map(({ u }) => u));
  const weights = used.map(({ u }) => (least === 0 ? 1 : (least / u) ** 2));
  const weight = weights.reduce((sum, each) => sum + each, 0);
  const value = used.reduce((sum, each, index) => sum + each.value * (weights[index] ?? 0), 0) / weight;
  const isTorn = all.some((one) => all.some((other) => Math.abs(one.value - other.value) > TORN_AT * Math.hypot(one.u, other.u)));
  return { value, standardUncertainty: least / Math.sqrt(weight), isTorn };
}
