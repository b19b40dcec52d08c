import { Injectable } from '@nestjs/common';
import type { CardState } from '#libs/checklist';
import type { DbClient, Tx } from '#libs/db';

/** What the rest of the house reads of a card without folding it: waits, debts, litres in the drum. Kept in step by the card's own transaction. */
@Injectable()
export class CardLedgers {
  async keepWaits(tx: Tx, jobId: string, { waits }: CardState, at: Date): Promise<void> {
    const open = await tx.jobWait.findMany({ where: { jobId, endedAt: null } });
    for (const row of open) {
      if (!waits.some(({ kind }) => kind === row.kind)) await tx.jobWait.update({ where: { id: row.id }, data: { endedAt: at } });
    }
    for (const wait of waits) {
      if (open.some(({ kind }) => kind === wait.kind)) continue;
      await tx.jobWait.create({
        data: {
          jobId,
          kind: wait.kind,
          words: wait.words ?? '',
          whoActs: wait.who,
          since: new Date(wait.since),
          until: wait.until === null ? null : new Date(wait.until),
        },
      });
    }
  }

  async keepDebts(tx: Tx, jobId: string, { debts }: CardState, { at, byId }: { at: Date; byId: string | null }): Promise<void> {
    for (const debt of debts) {
      const row = await tx.jobDebt.findFirst({ where: { jobId, kind: debt.kind }, orderBy: { openedAt: 'desc' } });
      const isOpen = row !== null && row.endedAt === null;
      if (debt.state === 'open' && !isOpen) {
        await tx.jobDebt.create({
          data: {
            jobId,
            kind: debt.kind,
            openedAt: new Date(debt.since),
            dueOn: debt.due === null ? null : new Date(debt.due),
            words: debt.reason ?? '',
          },
        });
      }
      if (debt.state !== 'open' && isOpen) {
        const why = debt.state === 'let-go' ? (debt.reason ?? 'Let go on the card') : null;
        await tx.jobDebt.update({ where: { id: row.id }, data: { endedAt: at, ending: debt.state, why, endedById: byId } });
      }
    }
  }

  /** Litres that a card action put into the drum: one entry per action, whatever is repeated. */
  async bookWaste(tx: Tx, entry: { jobId: string; actionId: string; volumeL: number; at: Date; byId: string }): Promise<void> {
    await tx.wasteEntry.createMany({ data: [{ ...entry, direction: 'in' }], skipDuplicates: true });
  }

  async openDebts(jobId: string, db: DbClient): Promise<{ id: string; kind: string }[]> {
    return db.jobDebt.findMany({ where: { jobId, endedAt: null }, select: { id: true, kind: true } });
  }
}
