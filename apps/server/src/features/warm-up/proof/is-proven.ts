import { compareLogs } from '#libs/warm-up';
import type { LogPair } from './pair-of-logs.ts';

/** A log that shows the repair at work; that it is still wrong is no proof that anything was cured. */
export function isProven({ before, after }: LogPair): boolean {
  const { outcome } = compareLogs(before?.analysis ?? null, after?.analysis ?? null);
  return outcome === 'cured' || outcome === 'works-now';
}
