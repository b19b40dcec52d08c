import { Injectable } from '@nestjs/common';
import { sqlState, type Tx } from '#libs/db';
import { Clock } from '../../platform/clock.ts';
import { requestContext } from '../../platform/request-context.ts';
import { noSuchStep } from './job-cards.errors.ts';

export interface StageMove {
  jobId: string;
  from: string;
  to: string;
  why?: string;
  actionId?: string;
}

const UNKNOWN_STEP = '23503';
const NOT_THERE = 'RW002';

/** The one way in which a job's stage changes: a row of its history, which the database checks and carries out. */
@Injectable()
export class JobStages {
  constructor(private readonly clock: Clock) {}

  /** Needs the job's row locked by the caller's transaction, or accepts that a racing move is refused. */
  async move(tx: Tx, { jobId, from, to, why = '', actionId }: StageMove): Promise<void> {
    try {
      await tx.jobStageChange.create({
        data: {
          jobId,
          from,
          to,
          at: this.clock.now(),
          byId: requestContext.getStore()?.staff?.staffId ?? null,
          why,
          ...(actionId === undefined ? {} : { actionId }),
        },
      });
    } catch (error) {
      const state = sqlState(error);
      if (state === UNKNOWN_STEP || state === NOT_THERE) throw noSuchStep(from, to);
      throw error;
    }
  }
}
