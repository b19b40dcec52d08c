import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { CardLedgers } from './card-ledgers.repository.ts';
import { JobAccountRepository } from './job-account.repository.ts';
import { endedAlready, stillOwed, whyLetGo } from './job-cards.errors.ts';
import { JobStages } from './job-stages.service.ts';

/** What a job still owes, or is owed, once its car has gone; squared when that is nothing. Only the tool squares a job. */
@Injectable()
export class JobAccount {
  constructor(
    private readonly ledgers: CardLedgers,
    private readonly account: JobAccountRepository,
    private readonly stages: JobStages,
    private readonly clock: Clock,
  ) {}

  /** The keys are out: the tag is free again, and what is open becomes a debt that can be seen. */
  async keysWentOut(tx: Tx, jobId: string): Promise<void> {
    await this.account.keysOut(tx, jobId, this.clock.now());
  }

  /** Keys out was taken back: the car is still ours, under its tag. */
  async keysCameBack(tx: Tx, jobId: string): Promise<void> {
    await this.account.keysOut(tx, jobId, null);
  }

  /** Brings the debts that follow from other rooms (money, units) up to date, then squares the job or takes that back. */
  async square(tx: Tx, jobId: string): Promise<void> {
    // Whoever pays, credits or ends a debt meanwhile waits here, so that the job is squared on what is true.
    const stage = await this.account.lockedStage(tx, jobId);
    if (stage !== 'keys-out' && stage !== 'squared') return;
    const at = this.clock.now();
    await this.account.keepDebt(tx, jobId, { kind: 'customer-money', isOwed: await this.account.owesMoney(tx, jobId), at });
    await this.account.keepDebt(tx, jobId, { kind: 'units-and-claims', isOwed: await this.account.hasUnitsOut(tx, jobId), at });
    const open = await this.ledgers.openDebts(jobId, tx);
    if (stage === 'keys-out' && open.length === 0) {
      await this.stages.move(tx, { jobId, from: 'keys-out', to: 'squared' });
      await this.account.squared(tx, jobId, at);
    }
    if (stage === 'squared' && open.length > 0) {
      await this.stages.move(tx, { jobId, from: 'squared', to: 'keys-out', why: 'Something is owed again' });
      await this.account.squared(tx, jobId, null);
    }
  }

  /** Done, or let go by the owner with a reason. */
  async endDebt(tx: Tx, debtId: string, { ending, why }: { ending: 'done' | 'let-go'; why: string }): Promise<string> {
    if (ending === 'let-go' && why === '') throw whyLetGo();
    const jobId = await this.account.endDebt(tx, debtId, { ending, why, at: this.clock.now(), byId: currentStaff().staffId });
    if (jobId === undefined) throw endedAlready();
    await this.square(tx, jobId);
    const isStillOwed = ending === 'done' && (await this.account.isOpen(tx, { jobId, kind: await this.account.kindOf(tx, debtId) }));
    if (isStillOwed) throw stillOwed();
    return jobId;
  }
}
