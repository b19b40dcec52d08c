const NEARLY = 0.9;

/** Why the browser kept nothing, in words, with what to do. */
export function cantBeKept(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') return 'This tablet’s storage is full: let it send what waits, or free some space on it.';
  if (name === 'InvalidStateError' || name === 'EncodingError') return 'This photo can’t be read: take it again.';
  return 'This tablet’s browser refuses to store anything: leave private browsing, or allow this site to store data.';
}

/** Only a secure origin is told how much is left; elsewhere storing is tried and a refusal is said. */
export async function isNearlyFull(): Promise<boolean> {
  const estimate = await navigator.storage?.estimate?.().catch(() => undefined);
  const quota = estimate?.quota ?? 0;
  return quota > 0 && (estimate?.usage ?? 0) / quota > NEARLY;
}
