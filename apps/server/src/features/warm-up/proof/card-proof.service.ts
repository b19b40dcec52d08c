import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { type Action, applyAction, type CardState } from '#libs/checklist';
import type { Tx } from '#libs/db';
import { Clock } from '../../../platform/clock.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { JobCards } from '../../job-cards/job-cards.service.ts';

const OPEN: readonly (string | undefined)[] = ['open', 'taken-back'];

/**
 * The card's steps for a log before and after: a log that was kept ticks its step, and so ends the debt that hangs on it. The tick
 * carries the log's id, so that a log which is withdrawn takes its own tick back and no other.
 */
@Injectable()
export class CardProof {
  constructor(
    private readonly cards: JobCards,
    private readonly clock: Clock,
  ) {}

  async tick(tx: Tx, jobId: string, { step, logId }: { step: string; logId: string }): Promise<void> {
    const { state } = await this.cards.open(jobId, tx);
    if (!OPEN.includes(state.steps[step]?.state)) return;
    await this.record(tx, state, this.action(jobId, { id: logId, kind: 'tick', step, value: null }));
  }

  async takeBack(tx: Tx, jobId: string, { step, logId, why }: { step: string; logId: string; why: string }): Promise<void> {
    const { state } = await this.cards.open(jobId, tx);
    const isOurs = state.steps[step]?.history.some(({ actionId, takenBack }) => actionId === logId && takenBack === null) === true;
    if (!isOurs) return;
    await this.record(tx, state, this.action(jobId, { id: randomUUID(), kind: 'take-back', step, value: { of: logId, reason: why } }));
  }

  /** What would not fit the card is left to the people at it. */
  private async record(tx: Tx, state: CardState, action: Action): Promise<void> {
    const fits = !applyAction(state, action).differences.some(({ actionId }) => actionId === action.id);
    if (fits) await this.cards.recordIn(tx, action.card, [action]);
  }

  private action(jobId: string, part: Pick<Action, 'id' | 'kind' | 'step' | 'value'>): Action {
    return { ...part, card: jobId, readAt: this.clock.now().toISOString(), by: currentStaff().staffId, byProof: 'session' };
  }
}
