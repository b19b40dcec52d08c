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
    // The ledger keeps one wait of a kind: the oldest of the card's.
    for (const wait of waits.filter(({ kind }, index) => waits.findIndex((one) => one.kind === kind) === index)) {
      if (open.some(({ kind }) => kind === wait.kind)) continue;
      await tx.jobWait.create({
        data: {
          jobId,
          kind: wait.kind,
          words: wait.words ?? '',
          whoActs: wait.who,
          since: new Date(wait.since),
          until: dayOf(wait.until),
        },
      });
    }
  }

  async keepDebts(tx: Tx, jobId: string, { debts }: CardState, { at, byId }: { at: Date; byId: string | null }): Promise<void> {
    for (const debt of debts) {
      // A debt that opens again dates from the same moment as the one that ended: the later row counts.
      const row = await tx.jobDebt.findFirst({ where: { jobId, kind: debt.kind }, orderBy: [{ openedAt: 'desc' }, { id: 'desc' }] });
      const isOpen = row !== null && row.endedAt === null;
      // What the owner let go stays let go: the card does not know of it.
      const isLetGo = row?.ending === 'let-go' && row.openedAt >= new Date(debt.since);
      if (debt.state === 'open' && !isOpen && !isLetGo) {
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

  /**
   * Brings the drum up to what the card says went into it: one entry per action, whatever is repeated. Entries stand for good, so
   * what was booked before a figure was taken back counts towards the new one.
   */
  async bookWaste(
    tx: Tx,
    { totalL, ...entry }: { jobId: string; actionId: string; totalL: number; at: Date; byId: string },
  ): Promise<void> {
    const booked = await tx.wasteEntry.aggregate({ where: { jobId: entry.jobId, actionId: { not: null } }, _sum: { volumeL: true } });
    const volumeL = toMillilitres(totalL - (booked._sum.volumeL?.toNumber() ?? 0));
    if (volumeL <= 0) return;
    await tx.wasteEntry.createMany({ data: [{ ...entry, volumeL, direction: 'in' }], skipDuplicates: true });
  }

  async openDebts(jobId: string, db: DbClient): Promise<{ id: string; kind: string }[]> {
    return db.jobDebt.findMany({ where: { jobId, endedAt: null }, select: { id: true, kind: true } });
  }
}

/** What the drum is kept in. */
const toMillilitres = (litres: number): number => Math.round(litres * 1000) / 1000;

/** A day as a tablet wrote it; what is no day of these centuries is left out. */
function dayOf(text: string | null): Date | null {
  const day = new Date(text ?? '');
  const year = day.getUTCFullYear();
  return year >= 1970 && year < 2200 ? day : null;
}
