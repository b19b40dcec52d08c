import { type Verdict, type WarmUpAnalysis } from '../types/analysis.ts';

export type Outcome = 'cured' | 'works-now' | 'looks-better' | 'not-proven' | 'not-cured' | 'owed';

const FAULTS: ReadonlySet<Verdict> = new Set(['stuck-open', 'opens-early', 'stuck-closed', 'leaks']);
/** A verdict less sure than this proves nothing to a customer. */
const SURE = 0.6;
const WARMER_K = 8;

/** What the pair of logs amounts to. */
export function outcomeOf(before: WarmUpAnalysis | null, after: WarmUpAnalysis | null): Outcome {
  if (!after) return 'owed';
  if (FAULTS.has(after.verdict)) return 'not-cured';
  const isSure = after.confidence >= SURE;
  if (after.verdict === 'normal' && isSure) return before && FAULTS.has(before.verdict) ? 'cured' : 'works-now';
  return isWarmer(before, after) ? 'looks-better' : 'not-proven';
}

function isWarmer(before: WarmUpAnalysis | null, after: WarmUpAnalysis): boolean {
  if (!before || before.verdict === 'stuck-closed' || after.verdict === 'doubtful-data') return false;
  const earlier = before.plateauC ?? before.highestC;
  const later = after.plateauC ?? after.highestC;
  return earlier !== null && later !== null && later >= earlier + WARMER_K;
}
