import { Inject, Injectable, Logger, type OnApplicationShutdown } from '@nestjs/common';
import { faultLine } from './fault-line.ts';

/** False in tests, which do such work when they mean to. */
export const WORKS_BY_ITSELF = Symbol('WORKS_BY_ITSELF');

/** What nobody asks for and must be done all the same, over and over: at once, then each time the interval is over. */
@Injectable()
export class Rounds implements OnApplicationShutdown {
  private readonly logger = new Logger('Rounds');
  private readonly timers: NodeJS.Timeout[] = [];
  private readonly underWay = new Map<string, Promise<void>>();

  constructor(@Inject(WORKS_BY_ITSELF) private readonly worksByItself: boolean) {}

  /** A round that is still under way is not joined by a second one; a failed one is told and tried again at the next. */
  every(ms: number, name: string, work: () => Promise<unknown>): void {
    if (!this.worksByItself) return;
    const round = (): void => {
      if (this.underWay.has(name)) return;
      this.underWay.set(name, this.once(name, work));
    };
    this.timers.push(setInterval(round, ms).unref());
    round();
  }

  private async once(name: string, work: () => Promise<unknown>): Promise<void> {
    try {
      await work();
    } catch (error) {
      this.logger.warn(`${name} put off: ${faultLine(error)}`);
    } finally {
      this.underWay.delete(name);
    }
  }

  async onApplicationShutdown(): Promise<void> {
    this.timers.forEach((timer) => {
      clearInterval(timer);
    });
    await Promise.all(this.underWay.values());
  }
}
