import { Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import { Clock } from '../../../platform/clock.ts';
import { Rounds } from '../../../platform/rounds.ts';
import { DraftsRepository } from '../keeping/drafts.repository.ts';

const EVERY_MS = 3_600_000;
const KEEP_MS = 7 * 24 * 3_600_000;

/** Forgets logs that nobody came back to. */
@Injectable()
export class ForgetDrafts implements OnApplicationBootstrap {
  constructor(
    private readonly drafts: DraftsRepository,
    private readonly clock: Clock,
    private readonly rounds: Rounds,
  ) {}

  onApplicationBootstrap(): void {
    this.rounds.every(EVERY_MS, 'Forgetting logs', () => this.forget());
  }

  async forget(): Promise<void> {
    await this.drafts.forgetOlderThan(new Date(this.clock.now().getTime() - KEEP_MS));
  }
}
