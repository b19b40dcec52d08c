import { type ComparisonCandidate, type ComparisonFeature, type NextReading } from './comparison.types.ts';
import { type FeatureEvidence } from './feature-evidence.ts';
import { type Posterior } from './posterior.ts';
import { firstReadingBits, repeatedReadingBits } from './reading-information.ts';

/** Less is no information at all, only rounding. */
const LEAST_BITS = 1e-9;

/**
 * The reading worth taking next: most expected information per minute among the features not read yet; else the first open
 * sealing feature not read; else a coarse reading worth repeating with the best instrument. A feature that could not be read
 * is not asked for again.
 *
 * @param evidence - every feature with what was read of it
 * @param candidates - all of them
 * @param context - present probabilities, and the leader's open sealing features
 */
export function nextReading(
  evidence: readonly FeatureEvidence[],
  candidates: readonly ComparisonCandidate[],
  { now, openFeatures }: { readonly now: Posterior; readonly openFeatures: readonly string[] },
): NextReading | undefined {
  if (now.none >= 1) return undefined;
  const unread = evidence
    .filter(({ missing }) => missing === 'not-read')
    .map(({ feature }) => worth(feature, firstReadingBits(feature, candidates, { now })));
  const best = mostWorth(unread);
  if (best !== undefined && best.expectedInformationBits > LEAST_BITS) return best;
  const open = unread.find(({ key }) => openFeatures.includes(key));
  if (open !== undefined) return open;
  const again = mostWorth(evidence.flatMap((each) => worthRepeating(each, candidates, { now })));
  return again !== undefined && again.expectedInformationBits > LEAST_BITS ? again : undefined;
}

function worth(feature: ComparisonFeature, expectedInformationBits: number): NextReading {
  const { key, minutes = 1 } = feature;
  return { key, expectedInformationBits, minutes, bitsPerMinute: expectedInformationBits / minutes };
}

function worthRepeating(
  { feature, figures }: FeatureEvidence,
  candidates: readonly ComparisonCandidate[],
  { now }: { readonly now: Posterior },
): NextReading[] {
  const [reading] = figures;
  if (reading === undefined || (feature.standardUncertainty ?? Number.POSITIVE_INFINITY) >= reading.standardUncertainty) return [];
  return [{ ...worth(feature, repeatedReadingBits(feature, candidates, { now, reading })), again: true }];
}

function mostWorth(readings: readonly NextReading[]): NextReading | undefined {
  return readings.reduce<NextReading | undefined>(
    (best, reading) => (best === undefined || reading.bitsPerMinute > best.bitsPerMinute ? reading : best),
    undefined,
  );
}
