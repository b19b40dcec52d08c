import { Injectable, type OnApplicationBootstrap, type OnModuleInit } from '@nestjs/common';
import type { CardState } from '#libs/checklist';
import type { Tx } from '#libs/db';
import { Clock } from '../../platform/clock.ts';
import { Rounds } from '../../platform/rounds.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import { CardFollowers } from '../job-cards/card-followers.service.ts';
import { JobCards } from '../job-cards/job-cards.service.ts';
import { ReleaseRepository } from './release.repository.ts';
import { releaseDecision } from './release-decision.ts';
import { Units } from './units.service.ts';

const EVERY_MS = 3_600_000;

/**
 * Sends the pieces that a job no longer needs on their way back by itself: with the card's action that proves the repair, and in
 * hourly rounds when a last day comes near. The desk sees them under “to go back”; keeping one as stock is one tap.
 */
@Injectable()
export class SetAsideRelease implements OnModuleInit, OnApplicationBootstrap {
  constructor(
    private readonly units: Units,
    private readonly rows: ReleaseRepository,
    private readonly cards: JobCards,
    private readonly followers: CardFollowers,
    private readonly rounds: Rounds,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  onModuleInit(): void {
    this.followers.add(async (tx, jobId, card) => {
      // Most actions settle nothing here: the card says so before a row is read.
      if (isFitted(card) || isProofPassed(card)) await this.follow(tx, jobId, card);
    });
  }

  onApplicationBootstrap(): void {
    this.rounds.every(EVERY_MS, 'Sending back what nobody needs', () => this.releaseAll());
  }

  /** Every job with a settled variant and pieces still set aside. */
  async releaseAll(): Promise<void> {
    for (const jobId of await this.rows.jobsDecided()) {
      await this.unitOfWork.run(async (tx) => {
        await this.release(tx, jobId);
        return null;
      });
    }
  }

  /** For a job whose pieces changed, as its card stands now. */
  async release(tx: Tx, jobId: string): Promise<void> {
    if ((await this.rows.chosenVariant(tx, jobId)) === undefined) return;
    await this.follow(tx, jobId, (await this.cards.open(jobId, tx)).state);
  }

  private async follow(tx: Tx, jobId: string, card: CardState): Promise<void> {
    const variantId = await this.rows.chosenVariant(tx, jobId);
    if (variantId === undefined) return;
    const { returnLeadDays, timeZone } = await this.workshop.get(tx);
    const decisions = releaseDecision(await this.units.ofJob(jobId, tx), {
      variantId,
      isFitted: isFitted(card),
      isProofPassed: isProofPassed(card),
      keptIds: await this.rows.keptIds(tx, jobId),
      today: isoDay(this.clock.now(), timeZone),
      leadDays: returnLeadDays,
    });
    for (const { unit, to, why } of decisions) {
      const held = await this.units.hold(tx, unit.id);
      // A person was quicker: theirs stands, and the action on the card is not refused for it.
      if (held.place === unit.place) await this.units.move(tx, held, { to, why, byItself: true });
    }
  }
}

const isFitted = ({ steps }: CardState): boolean => steps['fitted']?.state === 'done';

const isProofPassed = ({ holds }: CardState): boolean => holds.proof?.state === 'passed';
