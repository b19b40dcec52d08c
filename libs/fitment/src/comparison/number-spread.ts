import { type ComparisonCandidate, type ComparisonFeature } from './comparison.types.ts';
import { statedNumbers } from './stated-value.ts';

/** Share of the nominal figure that stands in for a spread of nothing at all. */
const NO_SPREAD_SHARE = 0.001;
/** Spreads below this share of the figure are beyond what the arithmetic resolves. */
const LEAST_SHARE = 1e-9;
const LEAST_SPREAD = 1e-12;
const TOLERANCES_WIDE = 10;
const SPREADS_WIDE = 6;

/**
 * Standard deviation of a reading around the stated figure: the part's own deviation, taken as uniform within the tolerance,
 * and the instrument. s² = tolerance²/3 + u²; nothing at all is replaced by a thousandth of the figure.
 *
 * @param nominal - stated figure
 * @param tolerance - half-width the part may deviate
 * @param standardUncertainty - of the instrument
 * @example readingSpread({ nominal: 82, tolerance: 2, standardUncertainty: 1 }) // 1.5275…
 */
export function readingSpread({
  nominal,
  tolerance,
  standardUncertainty,
}: {
  readonly nominal: number;
  readonly tolerance: number;
  readonly standardUncertainty: number;
}): number {
  const spread = Math.hypot(tolerance / Math.sqrt(3), standardUncertainty);
  const size = Math.abs(nominal);
  const standIn = size > 0 ? NO_SPREAD_SHARE * size : NO_SPREAD_SHARE;
  return Math.max(spread > 0 ? spread : standIn, LEAST_SHARE * size, LEAST_SPREAD);
}

/** The figures that a part outside the list could have, all equally likely. */
export interface BroadRange {
  readonly low: number;
  readonly high: number;
  readonly width: number;
}

/**
 * The range over which *none of these*, and a candidate that doesn't state the feature, are taken as equally likely
 * everywhere: the feature's own low and high, else the candidates' range widened each side by max(10 tolerances, 6 s).
 *
 * @param feature - a number feature
 * @param candidates - all of them, excluded ones too
 * @param standardUncertainty - of the instrument used
 * @returns null when no candidate states the feature and it has no range of its own
 */
export function broadRange(
  feature: ComparisonFeature,
  candidates: readonly ComparisonCandidate[],
  { standardUncertainty }: { readonly standardUncertainty: number },
): BroadRange | null {
  const nominals = statedNumbers(candidates, feature.key);
  const { tolerance = 0 } = feature;
  if (nominals.length === 0) {
    if (feature.low === undefined || feature.high === undefined) return null;
    return { low: feature.low, high: feature.high, width: feature.high - feature.low };
  }
  const spread = Math.max(...nominals.map((nominal) => readingSpread({ nominal, tolerance, standardUncertainty })));
  const margin = Math.max(TOLERANCES_WIDE * tolerance, SPREADS_WIDE * spread);
  const low = feature.low ?? Math.min(...nominals) - margin;
  const high = feature.high ?? Math.max(...nominals) + margin;
  return { low, high, width: high - low };
}
