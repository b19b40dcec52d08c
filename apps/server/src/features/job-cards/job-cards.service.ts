import { Injectable } from '@nestjs/common';
import { type Action, applyAction, type CardState, foldCard, type Stage } from '#libs/checklist';
import type { DbClient, Tx } from '#libs/db';
import { Clock } from '../../platform/clock.ts';
import { PrismaService } from '../../platform/database.ts';
import { retryConflicts } from '../../platform/retry-conflicts.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { CardFollowers } from './card-followers.service.ts';
import { CardLedgers } from './card-ledgers.repository.ts';
import { JobAccount } from './job-account.service.ts';
import { noCard } from './job-cards.errors.ts';
import type { CardRow } from './card-known.ts';
import { JobCardsRepository, type ReceivedAction } from './job-cards.repository.ts';
import { JobStages } from './job-stages.service.ts';
import { stagePath } from './stage-path.ts';

export interface OpenCard {
  row: CardRow;
  state: CardState;
}

/** What became of one action: it counts, or it is kept with the reason why it does not. */
export interface Acknowledged {
  id: string;
  difference: string | null;
}

/**
 * The job card: a fold over its actions in the order of receipt. Whoever sends one, it is kept exactly once; stage, waits, debts
 * and waste follow from the card in the same transaction.
 */
@Injectable()
export class JobCards {
  constructor(
    private readonly prisma: PrismaService,
    private readonly cards: JobCardsRepository,
    private readonly ledgers: CardLedgers,
    private readonly stages: JobStages,
    private readonly account: JobAccount,
    private readonly followers: CardFollowers,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  async open(jobId: string, db: DbClient = this.prisma.db): Promise<OpenCard> {
    const row = await this.cards.find(jobId, db);
    if (!row) throw noCard();
    const actions = await this.cards.actions(jobId, db);
    const workshop = await this.workshop.find(db);
    const setting = { onePersonSite: workshop?.isOnePerson ?? false, startStage: row.startStage as Stage };
    return { row, state: foldCard(row.definition, actions, setting) };
  }

  /** Takes actions in their order, each once. Those that do not fit are kept as differences, never dropped. */
  async record(jobId: string, actions: readonly Action[]): Promise<Acknowledged[]> {
    return retryConflicts(() =>
      this.prisma.db.$transaction((tx) => this.recordIn(tx, jobId, actions), { maxWait: 5_000, timeout: 15_000 }),
    );
  }

  /** The same inside a transaction of the caller's, such as the desk's taking in of a car. */
  async recordIn(tx: Tx, jobId: string, actions: readonly Action[]): Promise<Acknowledged[]> {
    await this.cards.lock(tx, jobId);
    const { row, state: before } = await this.open(jobId, tx);
    let card = before;
    const receivedAt = this.clock.now();
    const acknowledged: Acknowledged[] = [];
    const known = await this.cards.known(
      actions.map(({ id }) => id),
      tx,
    );
    const received: ReceivedAction[] = [];
    for (const action of actions) {
      const next = applyAction(card, action);
      const difference = next.differences.find(({ actionId }) => actionId === action.id)?.why ?? null;
      if (!known.has(action.id)) {
        known.add(action.id);
        received.push({ action, receivedAt, difference });
        await this.bookWaste(tx, action, { before: card, after: next });
        await this.followStage(tx, row, { card: next, action });
        card = next;
      }
      acknowledged.push({ id: action.id, difference });
    }
    await this.cards.add(tx, received);
    await this.ledgers.keepWaits(tx, jobId, card, receivedAt);
    await this.ledgers.keepDebts(tx, jobId, card, { at: receivedAt, byId: actions.at(-1)?.by ?? null });
    await this.followers.tell(tx, jobId, card);
    await this.account.square(tx, jobId);
    return acknowledged;
  }

  private async followStage(tx: Tx, row: CardRow, { card, action }: { card: CardState; action: Action }): Promise<void> {
    const isTakenBack = action.kind === 'take-back';
    if (card.stage === row.stage || (row.stage === 'squared' && !isTakenBack)) return;
    for (const to of stagePath(row.stage as Stage, card.stage, { isTakenBack })) {
      await this.stages.move(tx, {
        jobId: row.id,
        from: row.stage,
        to,
        actionId: action.id,
        ...(isTakenBack ? { why: 'Taken back' } : {}),
      });
      if (row.stage === 'keys-out') await this.account.keysCameBack(tx, row.id);
      row.stage = to;
    }
    if (card.stage === 'keys-out') await this.account.keysWentOut(tx, row.id);
  }

  private async bookWaste(tx: Tx, action: Action, { before, after }: { before: CardState; after: CardState }): Promise<void> {
    const litres = (card: CardState): number => card.facts.numbers['wasteBookedL']?.value ?? 0;
    const totalL = litres(after);
    if (totalL <= litres(before)) return;
    await this.ledgers.bookWaste(tx, { jobId: action.card, actionId: action.id, totalL, at: new Date(action.readAt), byId: action.by });
  }
}
