import { Clock } from '../../apps/server/src/platform/clock.ts';

/** A clock that stands still until it is set. */
export class TestClock extends Clock {
  constructor(private at: Date = new Date('2026-06-09T08:00:00Z')) {
    super();
  }

  override now(): Date {
    return this.at;
  }

  set(at: string | Date): void {
    this.at = new Date(at);
  }

  pass({ minutes }: { minutes: number }): void {
    this.at = new Date(this.at.getTime() + minutes * 60_000);
  }
}
