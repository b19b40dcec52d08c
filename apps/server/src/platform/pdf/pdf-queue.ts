/** Runs at most so many tasks at once and lets at most so many wait; beyond that it says no at once. */
export class PdfQueue {
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
      this.active -= 1;
      this.waiting.shift()?.();
    }
  }

  private async enter(): Promise<void> {
    if (this.active >= this.limits.atOnce) {
      if (this.waiting.length >= this.limits.waiting) throw this.full();
      await new Promise<void>((resolve) => this.waiting.push(resolve));
    }
    this.active += 1;
  }
}
