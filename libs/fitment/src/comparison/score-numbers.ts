import { type ConformanceVerdict } from '../conformance/conformance.types.ts';
import { judgeReading } from '../conformance/judge-reading.ts';
import { type ComparisonCandidate } from './comparison.types.ts';
import { type FeatureEvidence } from './feature-evidence.ts';
import { broadRange, readingSpread } from './number-spread.ts';
import { type PooledReading } from './pool-readings.ts';
import { type FeatureScores, type Score } from './score.types.ts';
import { statedValue } from './stated-value.ts';

const LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/**
 * Scores the readings of a number feature: normal around a candidate's stated figure, uniform over the broad range for a
 * candidate that states none and for *none of these*.
 *
 * @param evidence - with at least one reading
 * @param candidates - all of them
 */
export function scoreNumbers({ feature, figures }: FeatureEvidence, candidates: readonly ComparisonCandidate[]): FeatureScores {
  const broad = figures.map(({ standardUncertainty }) => broadRange(feature, candidates, { standardUncertainty }));
  const noneLogLikelihood = broad.reduce((sum, range) => sum - (range === null ? 0 : Math.log(range.width)), 0);
  const scores = candidates.map((candidate): Score => {
    const nominal = statedValue(candidate, feature.key);
    if (typeof nominal !== 'number') return { verdict: 'not-proven', logLikelihood: noneLogLikelihood, note: 'not-stated' };
    return scoreOne(nominal, figures, { tolerance: feature.tolerance ?? 0 });
  });
  return { key: feature.key, scores, noneLogLikelihood };
}

function scoreOne(nominal: number, figures: readonly PooledReading[], { tolerance }: { readonly tolerance: number }): Score {
  let logLikelihood = 0;
  const verdicts: ConformanceVerdict[] = [];
  for (const { value, standardUncertainty } of figures) {
    const spread = readingSpread({ nominal, tolerance, standardUncertainty });
    const z = (value - nominal) / spread;
    logLikelihood += -0.5 * z * z - Math.log(spread) - LOG_ROOT_TWO_PI;
    verdicts.push(judgeReading({ nominal, tolerance, measured: value, standardUncertainty }).verdict);
  }
  return { verdict: worstOf(verdicts), logLikelihood };
}

/** One proven mismatch is enough; to conform, every place has to. */
function worstOf(verdicts: readonly ConformanceVerdict[]): ConformanceVerdict {
  if (verdicts.includes('does-not-conform')) return 'does-not-conform';
  return verdicts.every((verdict) => verdict === 'conforms') ? 'conforms' : 'not-proven';
}
