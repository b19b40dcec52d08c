import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { END_PLACES } from '#libs/unit-life';

/** Places in which a unit's money is still somebody's to chase. */
const UNITS_OUT = ['expected', 'set-aside', 'to-return', 'handed-over', 'taken-out'];

@Injectable()
export class JobAccountRepository {
  async lockedStage(tx: Tx, jobId: string): Promise<string | undefined> {
    const [row] = await tx.$queryRaw<{ stage: string }[]>`select stage from job where id = ${jobId}::uuid for update`;
    return row?.stage;
  }

  async kindOf(tx: Tx, debtId: string): Promise<string> {
    return (await tx.jobDebt.findUniqueOrThrow({ where: { id: debtId }, select: { kind: true } })).kind;
  }

  async isOpen(tx: Tx, { jobId, kind }: { jobId: string; kind: string }): Promise<boolean> {
    return (await tx.jobDebt.count({ where: { jobId, kind, endedAt: null } })) > 0;
  }

  async keysOut(tx: Tx, jobId: string, at: Date | null): Promise<void> {
    await tx.job.update({
      where: { id: jobId },
      data: { keysOutAt: at, ...(at === null ? {} : { keyTag: null }), version: { increment: 1 } },
    });
  }

  async squared(tx: Tx, jobId: string, at: Date | null): Promise<void> {
    await tx.job.update({ where: { id: jobId }, data: { squaredAt: at, version: { increment: 1 } } });
  }

  /** Not invoiced (and not free of charge), or invoiced and not fully paid. */
  async owesMoney(tx: Tx, jobId: string): Promise<boolean> {
    const [row] = await tx.$queryRaw<{ owes: boolean }[]>`
      select case
        when exists (select from invoice where job_id = ${jobId}::uuid and kind in ('invoice', 'simplified')) then
          (select coalesce(sum(case when kind = 'credit-note' then -payable else payable end), 0) from invoice where job_id = ${jobId}::uuid)
          <> (select coalesce(sum(p.amount), 0) from payment p join invoice i on i.id = p.invoice_id where i.job_id = ${jobId}::uuid)
        else (select no_charge_why is null from job where id = ${jobId}::uuid)
      end as owes`;
    return row?.owes ?? true;
  }

  /** A piece that is on its way, or one at its end for which a charge or a credit came late. */
  async hasUnitsOut(tx: Tx, jobId: string): Promise<boolean> {
    const [row] = await tx.$queryRaw<{ out: boolean }[]>`
      select exists (select from part_unit u where u.job_id = ${jobId}::uuid and (u.place = any(${UNITS_OUT}) or (u.place = any(${[...END_PLACES]})
        and (select coalesce(sum(case kind when 'charged' then amount_net else -amount_net end), 0) from unit_money where unit_id = u.id) <> 0))) as out`;
    return row?.out ?? true;
  }

  async keepDebt(tx: Tx, jobId: string, { kind, isOwed, at }: { kind: string; isOwed: boolean; at: Date }): Promise<void> {
    const last = await tx.jobDebt.findFirst({
      where: { jobId, kind },
      orderBy: [{ openedAt: 'desc' }, { id: 'desc' }],
      select: { id: true, endedAt: true, ending: true },
    });
    const isOpen = last !== null && last.endedAt === null;
    // What the owner let go stays let go.
    if (isOwed && !isOpen && last?.ending !== 'let-go') await tx.jobDebt.create({ data: { jobId, kind, openedAt: at } });
    if (!isOwed && isOpen) await tx.jobDebt.update({ where: { id: last.id }, data: { endedAt: at, ending: 'done' } });
  }

  /** @returns the job, or undefined where the debt has ended before. */
  async endDebt(tx: Tx, debtId: string, end: { ending: string; why: string; at: Date; byId: string }): Promise<string | undefined> {
    const { count } = await tx.jobDebt.updateMany({
      where: { id: debtId, endedAt: null },
      data: { ending: end.ending, why: end.why === '' ? null : end.why, endedAt: end.at, endedById: end.byId },
    });
    if (count === 0) return undefined;
    return (await tx.jobDebt.findUniqueOrThrow({ where: { id: debtId }, select: { jobId: true } })).jobId;
  }
}
