import { sayDuration, sayTemp } from '../words/say.ts';
import { type WarmUpAnalysis } from '../types/analysis.ts';
import { comparisonLimits } from './comparison-limits.ts';
import { outcomeOf, type Outcome } from './outcome.ts';

/** Before and after in words that a customer can read. */
export interface Comparison {
  outcome: Outcome;
  headline: string;
  sentences: string[];
  /** What the two logs do not show. */
  limits: string[];
  proofOwed: boolean;
}

const HEADLINES: Readonly<Record<Outcome, string>> = {
  cured: 'Warms up as it should',
  'works-now': 'Warms up as it should now',
  'looks-better': 'Looks better, not yet proven',
  'not-proven': 'Not yet proven',
  'not-cured': 'Still not right',
  owed: 'The proof is still owed',
};

/**
 * Says what two logs of the same car prove about a repair, and what they don't. They need not be of the same day.
 *
 * @param before Analysis of the log before the repair, null when there is none
 * @param after Analysis of the log after it, null while it is still owed
 * @example compareLogs(stuckOpen, normal).headline // 'Warms up as it should'
 */
export function compareLogs(before: WarmUpAnalysis | null, after: WarmUpAnalysis | null): Comparison {
  const outcome = outcomeOf(before, after);
  const sentences = [
    ...(before ? [`Before the repair: ${told(before)}.`] : []),
    ...(after
      ? [`After it: ${told(after)}.`]
      : ['The log after the repair has not been taken yet; until then nothing shows that the repair worked.']),
    ...(outcome === 'works-now' && before ? ['The log before the repair did not prove the fault by itself.'] : []),
    ...(outcome === 'looks-better' ? ['The engine gets warmer than before, but this log can’t prove the thermostat.'] : []),
  ];
  return {
    outcome,
    headline: HEADLINES[outcome],
    sentences,
    limits: comparisonLimits(before, after),
    proofOwed: outcome === 'owed' || outcome === 'not-proven' || outcome === 'looks-better',
  };
}

/** One log in half a sentence. */
function told({ plateauC, highestC, timeTo80S, openingC }: WarmUpAnalysis): string {
  const parts: string[] = [];
  if (plateauC !== null) parts.push(`the engine settled at ${sayTemp(plateauC)}`);
  else if (highestC !== null) parts.push(`the engine reached ${sayTemp(highestC)}`);
  if (timeTo80S !== null) parts.push(`80 °C came after ${sayDuration(timeTo80S)}`);
  else if (highestC !== null && highestC < 80) parts.push('80 °C was never reached');
  if (openingC)
    parts.push(
      `the thermostat opens at about ${sayTemp(openingC.estimate)} (${Math.round(openingC.low)} to ${Math.round(openingC.high)} °C)`,
    );
  return parts.length > 0 ? parts.join(', ') : 'too few readings';
}
