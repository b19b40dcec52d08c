import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import type { Adjustment, BillFacts, LineEdit } from './job-bill.repository.ts';

/** What the desk changes on a draft: rows beside the job, never the job's own records. */
@Injectable()
export class DraftChanges {
  /** One row per line of the draft that the desk changed, added or took out. */
  async saveEdit(tx: Tx, jobId: string, edit: Omit<LineEdit, 'id'> & { at: Date }): Promise<void> {
    const { isRemoved, at, origin, ...fields } = edit;
    const removedAt = isRemoved ? at : null;
    const position = await tx.jobLine.count({ where: { jobId } });
    await tx.jobLine.upsert({
      where: { jobId_origin: { jobId, origin } },
      create: { jobId, origin, position, removedAt, ...fields },
      update: { removedAt, ...fields },
    });
  }

  async addAdjustment(tx: Tx, jobId: string, adjustment: Omit<Adjustment, 'id'> & { at: Date }): Promise<void> {
    await tx.jobAdjustment.create({ data: { jobId, ...adjustment } });
  }

  /** @returns whether it was there. */
  async takeAdjustmentBack(tx: Tx, jobId: string, { id, at }: { id: string; at: Date }): Promise<boolean> {
    const { count } = await tx.jobAdjustment.updateMany({ where: { id, jobId, removedAt: null }, data: { removedAt: at } });
    return count > 0;
  }

  async savePaper(tx: Tx, jobId: string, paper: BillFacts['paper']): Promise<void> {
    await tx.jobPaper.upsert({ where: { jobId }, create: { jobId, ...paper }, update: paper });
  }
}
