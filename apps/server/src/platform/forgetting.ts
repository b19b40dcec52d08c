import { Inject, Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { KeptForms } from './access/kept-forms.ts';
import { SEALS_BY_ITSELF } from './audit-chain.ts';
import { Clock } from './clock.ts';
import { PrismaService } from './database.ts';
import { faultLine } from './fault-line.ts';

const EVERY_MS = 3_600_000;
/** Longer than any form or tablet waits to send again. */
const KEEP_KEYS_MS = 7 * 24 * 3_600_000;

/** Forgets what served its time: keys of requests that nobody repeats any more, forms that nobody fetched. */
@Injectable()
export class Forgetting implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger('Forgetting');
  private timer: NodeJS.Timeout | undefined;
  private running: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly prisma: PrismaService,
    private readonly keptForms: KeptForms,
    private readonly clock: Clock,
    @Inject(SEALS_BY_ITSELF) private readonly runsByItself: boolean,
  ) {}

  onApplicationBootstrap(): void {
    if (!this.runsByItself) return;
    const tick = (): void => {
      this.running = this.forget().catch((error: unknown) => this.logger.warn(`Put off: ${faultLine(error)}`));
    };
    this.timer = setInterval(tick, EVERY_MS).unref();
    tick();
  }

  async onApplicationShutdown(): Promise<void> {
    clearInterval(this.timer);
    await this.running;
  }

  async forget(): Promise<void> {
    const before = new Date(this.clock.now().getTime() - KEEP_KEYS_MS);
    await this.prisma.db.idempotencyKey.deleteMany({ where: { at: { lt: before } } });
    await this.keptForms.forgetOld();
  }
}
