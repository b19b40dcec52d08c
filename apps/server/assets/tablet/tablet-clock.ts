/** A clock that is wrong by less is not spoken of. */
const WORTH_SAYING_MS = 120_000;

/** The workshop's time on a tablet whose own clock may be wrong: never earlier than what was written last. */
export class TabletClock {
  private lastMs = 0;

  /** @param offsetMs the server's clock less this one's, as of the last contact */
  constructor(private offsetMs = 0) {}

  get offset(): number {
    return this.offsetMs;
  }

  /** @param serverNow what the server's clock said just now */
  meet(serverNow: string): void {
    this.offsetMs = Date.parse(serverNow) - Date.now();
    this.lastMs = 0;
  }

  remember({ offsetMs, lastReadAt }: { offsetMs: number; lastReadAt: string | undefined }): void {
    this.offsetMs = offsetMs;
    this.lastMs = Date.parse(lastReadAt ?? '') || 0;
  }

  now(): Date {
    return new Date(Math.max(Date.now() + this.offsetMs, this.lastMs));
  }

  /** @example clock.words() // 'This tablet’s clock is 24 h ahead: the workshop’s time is written.' */
  words(): string {
    return Math.abs(this.offsetMs) < WORTH_SAYING_MS
      ? ''
      : `This tablet’s clock is ${spanWords(Math.abs(this.offsetMs))} ${this.offsetMs > 0 ? 'behind' : 'ahead'}: the workshop’s time is written.`;
  }
}

function spanWords(ms: number): string {
  const minutes = Math.round(ms / 60_000);
  return minutes < 120 ? `${minutes} min` : `${Math.round(minutes / 60)} h`;
}
