/** Counts on from the start that the server has, so that a reload changes nothing. */
export function showClocks(): void {
  for (const clock of document.querySelectorAll<HTMLElement>('.clock[data-since]')) {
    const since = Date.parse(clock.dataset['since'] ?? '');
    const output = clock.querySelector('output');
    if (Number.isNaN(since) || !output) continue;
    const show = (): void => {
      output.value = elapsed(Date.now() - since);
    };
    show();
    setInterval(show, 1000);
  }
}

/** @example elapsed(187_000) // '3:07' */
function elapsed(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
