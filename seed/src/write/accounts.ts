import type { Tx } from '#libs/db';
import { laterBy } from '../workshop-hours.ts';
import type { WrittenJob } from './jobs.ts';

const UNITS_OUT = ['expected', 'set-aside', 'to-return', 'handed-over', 'taken-out'];

/** What gone jobs still owe; those that owe nothing are squared, as the tool does it. */
export async function writeAccounts(tx: Tx, jobs: readonly (WrittenJob & { isPaid: boolean })[]): Promise<void> {
  for (const { plan, keysOutAt, isPaid } of jobs) {
    if (keysOutAt === null) continue;
    const debt = { jobId: plan.id, openedAt: keysOutAt };
    if (!isPaid) await tx.jobDebt.create({ data: { ...debt, kind: 'customer-money' } });
    const unitsOut = await tx.partUnit.count({ where: { jobId: plan.id, place: { in: UNITS_OUT } } });
    if (unitsOut > 0) await tx.jobDebt.create({ data: { ...debt, kind: 'units-and-claims' } });
    const open = await tx.jobDebt.count({ where: { jobId: plan.id, endedAt: null } });
    if (open > 0) continue;
    const at = laterBy(keysOutAt, 25 * 60);
    await tx.jobStageChange.create({ data: { jobId: plan.id, from: 'keys-out', to: 'squared', at } });
    await tx.job.update({ where: { id: plan.id }, data: { squaredAt: at } });
  }
}
