import { Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import { KeptForms } from './access/kept-forms.ts';
import { Clock } from './clock.ts';
import { PrismaService } from './database.ts';
import { Rounds } from './rounds.ts';

const EVERY_MS = 3_600_000;
/** Longer than any form or tablet waits to send again. */
const KEEP_KEYS_MS = 7 * 24 * 3_600_000;

/** Forgets what served its time: keys of requests that nobody repeats any more, forms that nobody fetched. */
@Injectable()
export class Forgetting implements OnApplicationBootstrap {
  constructor(
    private readonly prisma: PrismaService,
    private readonly keptForms: KeptForms,
    private readonly clock: Clock,
    private readonly rounds: Rounds,
  ) {}

  onApplicationBootstrap(): void {
    this.rounds.every(EVERY_MS, 'Forgetting', () => this.forget());
  }

  async forget(): Promise<void> {
    const before = new Date(this.clock.now().getTime() - KEEP_KEYS_MS);
    await this.prisma.db.idempotencyKey.deleteMany({ where: { at: { lt: before } } });
    await this.keptForms.forgetOld();
  }
}
