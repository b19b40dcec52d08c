import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Clock } from '../../platform/clock.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import { JobCards } from '../job-cards/job-cards.service.ts';
import { ReleaseRepository } from './release.repository.ts';
import { releaseDecision } from './release-decision.ts';
import { Units } from './units.service.ts';

/**
 * Sends the pieces that a job no longer needs on their way back by itself: once the proof has passed on its card, or when the
 * last day comes near. The desk sees them under “to go back”; keeping one as stock is one tap.
 */
@Injectable()
export class SetAsideRelease {
  constructor(
    private readonly units: Units,
    private readonly rows: ReleaseRepository,
    private readonly cards: JobCards,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** For every job with decided pieces still set aside; called where the shelf is looked at. */
  async releaseAll(): Promise<void> {
    for (const jobId of await this.rows.jobsDecided()) {
      await this.unitOfWork.run(async (tx) => {
        await this.releaseSetAside(tx, jobId);
        return null;
      });
    }
  }

  /** @returns how many were moved. */
  async releaseSetAside(tx: Tx, jobId: string): Promise<number> {
    const variantId = await this.rows.chosenVariant(tx, jobId);
    if (variantId === undefined) return 0;
    const { state } = await this.cards.open(jobId, tx);
    const units = await this.units.ofJob(jobId, tx);
    const { returnLeadDays, timeZone } = await this.workshop.get(tx);
    const decisions = releaseDecision(units, {
      variantId,
      isFitted: state.steps['fitted']?.state === 'done',
      isProofPassed: state.holds.proof?.state === 'passed',
      today: isoDay(this.clock.now(), timeZone),
      leadDays: returnLeadDays,
    });
    for (const { unit, to, why } of decisions) {
      await this.units.move(tx, await this.units.hold(tx, unit.id), { to, why, byItself: true });
    }
    return decisions.length;
  }
}
