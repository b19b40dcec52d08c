import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { WHOLE_CARD } from '#libs/checklist';
import type { Tx } from '#libs/db';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { JobCards } from '../job-cards/job-cards.service.ts';
import { Units } from '../returns/units.service.ts';

/** How a wait that an order began is told from one that somebody put on the card. */
const WORDS = 'On order';

/** A job waits for its part from the order to the last piece that comes, or will not come: said on its card, without a tap. */
@Injectable()
export class PartWait {
  constructor(
    private readonly cards: JobCards,
    private readonly units: Units,
    private readonly clock: Clock,
  ) {}

  async begin(tx: Tx, jobId: string, { who, until }: { who: string; until: string | null }): Promise<void> {
    if ((await this.running(tx, jobId)).length > 0) return;
    await this.say(tx, jobId, { kind: 'wait', value: { for: 'part', who, until, words: WORDS } });
  }

  async endIfAllCame(tx: Tx, jobId: string): Promise<void> {
    const units = await this.units.ofJob(jobId, tx);
    if (units.some(({ place }) => place === 'expected')) return;
    for (const of of await this.running(tx, jobId)) await this.say(tx, jobId, { kind: 'wait-over', value: { of } });
  }

  /** Actions that began a wait for an ordered part. */
  private async running(tx: Tx, jobId: string): Promise<string[]> {
    const { state } = await this.cards.open(jobId, tx);
    return state.waits.flatMap(({ kind, words, actionId }) => (kind === 'part' && words === WORDS && actionId !== null ? [actionId] : []));
  }

  private async say(tx: Tx, jobId: string, action: { kind: 'wait' | 'wait-over'; value: unknown }): Promise<void> {
    const by = currentStaff().staffId;
    const readAt = this.clock.now().toISOString();
    await this.cards.recordIn(tx, jobId, [{ id: randomUUID(), card: jobId, step: WHOLE_CARD, readAt, by, byProof: 'session', ...action }]);
  }
}
