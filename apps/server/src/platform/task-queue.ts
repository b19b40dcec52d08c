/** Runs at most so many tasks at once and lets at most so many wait; beyond that it says no at once. */
export class TaskQueue {
  private readonly waiting: (() => void)[] = [];
  private active = 0;

  constructor(
    private readonly limits: { atOnce: number; waiting: number },
    private readonly full: () => Error,
  ) {}

  async run<T>(task: () => Promise<T>): Promise<T> {
    await this.enter();
    try {
      return await task();
    } finally {
      const next = this.waiting.shift();
      // The slot is handed over, so that nobody who comes in between takes it too.
      if (next) next();
      else this.active -= 1;
    }
  }

  private async enter(): Promise<void> {
    if (this.active < this.limits.atOnce) {
      this.active += 1;
      return;
    }
    if (this.waiting.length >= this.limits.waiting) throw this.full();
    await new Promise<void>((resolve) => this.waiting.push(resolve));
  }
}
