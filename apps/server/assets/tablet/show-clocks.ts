let isRunning = false;

/** Counts on from the start that the card has, so that a reload changes nothing; every clock on the page, also those drawn later. */
export function showClocks(): void {
  tick();
  if (isRunning) return;
  isRunning = true;
  setInterval(tick, 1000);
}

function tick(): void {
  for (const clock of document.querySelectorAll<HTMLElement>('.clock[data-since]')) {
    const since = Date.parse(clock.dataset['since'] ?? '');
    const output = clock.querySelector('output');
    if (!Number.isNaN(since) && output) output.value = elapsed(Date.now() - since);
  }
}

/** @example elapsed(187_000) // '3:07' */
function elapsed(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** What can no longer be taken back without a reason stops offering it. */
export function endOffers(): void {
  for (const offer of document.querySelectorAll<HTMLElement>('[data-until]')) {
    const leftMs = Date.parse(offer.dataset['until'] ?? '') - Date.now();
    if (Number.isFinite(leftMs)) setTimeout(() => offer.remove(), Math.min(Math.max(0, leftMs), 30_000));
  }
}
