import { type ConformanceQuestion, type ConformanceVerdict } from './conformance.types.ts';
import { CONFORMANCE_PROBABILITY, GUARD_FACTOR, ROUNDING_SLACK } from './guard-band.ts';
import { insideProbability } from './inside-probability.ts';

/**
 * The guard-banded verdict on one reading and the probability behind it: {@link conformance} without the acceptance
 * interval and the checks, for use where many readings are judged.
 *
 * @example judgeReading({ nominal: 10, tolerance: 0.05, measured: 10.03, standardUncertainty: 0.02 }).verdict // 'not-proven'
 */
export function judgeReading({ nominal, tolerance, measured, standardUncertainty }: ConformanceQuestion): {
  verdict: ConformanceVerdict;
  probability: number;
} {
  const deviation = measured - nominal;
  const scale = Math.max(Math.abs(nominal), Math.abs(measured), tolerance);
  const probability = insideProbability({ deviation, tolerance, standardUncertainty, scale });
  if (probability >= CONFORMANCE_PROBABILITY) return { verdict: 'conforms', probability };
  const outsideBy = Math.abs(deviation) - tolerance;
  const isProvenOutside = outsideBy >= GUARD_FACTOR * standardUncertainty - ROUNDING_SLACK * scale;
  return { verdict: isProvenOutside ? 'does-not-conform' : 'not-proven', probability };
}
