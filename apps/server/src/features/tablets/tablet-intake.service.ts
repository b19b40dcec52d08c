import { Injectable, Logger } from '@nestjs/common';
import type { Device } from '../../platform/access/devices.ts';
import { Clock } from '../../platform/clock.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { CardIntake } from '../job-cards/card-intake.service.ts';
import { readTabletBatch, type TabletAction } from './read-tablet-batch.ts';
import { badBatch } from './tablets.errors.ts';
import { TabletsRepository } from './tablets.repository.ts';

/** What became of one thing that a tablet sent. `stray`: no card could take it; it is kept for a person to look at. */
export interface TabletAnswer {
  id: string;
  state: 'kept' | 'difference' | 'stray';
  why: string | null;
}

/**
 * Takes what tablets send, in their order, each exactly once by its id. Nothing is refused for good: what fits no card is kept as
 * it came, so that one bad entry never holds up those behind it and none is lost.
 */
@Injectable()
export class TabletIntake {
  private readonly logger = new Logger('TabletIntake');

  constructor(
    private readonly cards: CardIntake,
    private readonly tablets: TabletsRepository,
    private readonly clock: Clock,
  ) {}

  async take(tablet: Device, body: unknown): Promise<TabletAnswer[]> {
    const batch = readTabletBatch(body);
    if (typeof batch === 'string') throw badBatch(batch);
    const proofs = await this.tablets.signIns(
      tablet.id,
      batch.flatMap(({ signIn }) => signIn ?? []),
    );
    const answers: TabletAnswer[] = [];
    for (let at = 0; at < batch.length;) {
      const run = sameCard(batch, at);
      answers.push(...(await this.takeRun(tablet, run, proofs)));
      at += run.length;
    }
    return answers;
  }

  /** Actions of one card that came one after another: in one transaction, or each by itself where that fails. */
  private async takeRun(tablet: Device, run: readonly TabletAction[], proofs: ReadonlyMap<string, string>): Promise<TabletAnswer[]> {
    try {
      return await this.onCard(tablet, run, proofs);
    } catch (error) {
      if (!(error instanceof DomainError) || error.kind === 'unavailable') throw error; // ours: the tablet sends again
      const [only] = run;
      if (run.length === 1 && only) return [await this.keepStray(tablet, only, error)];
    }
    const answers: TabletAnswer[] = [];
    for (const one of run) answers.push(...(await this.takeRun(tablet, [one], proofs)));
    return answers;
  }

  private async onCard(tablet: Device, run: readonly TabletAction[], proofs: ReadonlyMap<string, string>): Promise<TabletAnswer[]> {
    const senders = run.map(({ action, signIn }) => ({
      action: { ...action, deviceId: tablet.id },
      // The sign-in that it names says whose it is; without one the name is only said.
      provenId: signIn === null ? null : (proofs.get(signIn) ?? null),
    }));
    const acknowledged = await this.cards.takeFromTablet(run[0]?.card ?? '', senders);
    return acknowledged.map(({ id, difference }) => ({ id, state: difference === null ? 'kept' : 'difference', why: difference }));
  }

  private async keepStray(tablet: Device, { id, sent, deviceSeq }: TabletAction, error: DomainError): Promise<TabletAnswer> {
    const why = error.details.errors?.[0]?.message ?? error.message;
    this.logger.warn(`Kept apart what no card could take: ${error.code}`);
    await this.tablets.keepStray({ id, tabletId: tablet.id, deviceSeq, sent, why, receivedAt: this.clock.now() });
    return { id, state: 'stray', why };
  }
}

function sameCard(batch: readonly TabletAction[], at: number): readonly TabletAction[] {
  const card = batch[at]?.card;
  const end = batch.findIndex((one, index) => index > at && one.card !== card);
  return batch.slice(at, end === -1 ? undefined : end);
}
