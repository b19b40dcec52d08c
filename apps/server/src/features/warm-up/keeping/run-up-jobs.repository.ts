import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';
import { MOST_ROWS } from '../../../platform/paging.ts';

/** A job as proof sheets and pages of the Run-up need it. */
export const RUN_UP_JOB = {
  id: true,
  number: true,
  keyTag: true,
  stage: true,
  vehicleId: true,
  vehicle: { select: { make: true, model: true, registration: true, engineCode: true, thermostatKind: true } },
  customer: { select: { name: true } },
  debts: { where: { endedAt: null, kind: 'after-log' }, select: { dueOn: true } },
} as const;

const GONE = ['keys-out', 'squared', 'fell-through'];

export type RunUpJob = NonNullable<Awaited<ReturnType<RunUpJobsRepository['find']>>>;
export type RunUpJobRow = Awaited<ReturnType<RunUpJobsRepository['list']>>[number];

/** Jobs as the Run-up sees them. */
@Injectable()
export class RunUpJobsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async find(id: string, db: DbClient = this.prisma.db) {
    return db.job.findUnique({ where: { id }, select: RUN_UP_JOB });
  }

  /** Holds the job's row until the transaction ends: whoever else changes it waits. */
  async lock(tx: Tx, id: string): Promise<void> {
    await tx.$queryRaw`select 1 from job where id = ${id}::uuid for update`;
  }

  /** Those here, those that owe their proof, and those with a log since `since`. */
  async list(since: Date) {
    return this.prisma.db.job.findMany({
      where: {
        OR: [
          { stage: { notIn: ['spoken-of', ...GONE] } },
          { debts: { some: { kind: 'after-log', endedAt: null } } },
          { warmUpLogs: { some: { keptAt: { gte: since } } } },
        ],
      },
      orderBy: { number: 'desc' },
      take: MOST_ROWS,
      select: {
        ...RUN_UP_JOB,
        warmUpLogs: { where: { withdrawal: null }, select: { role: true } },
        proofSheets: { orderBy: { version: 'desc' }, take: 1, select: { outcome: true, madeAt: true } },
      },
    });
  }

  async staffNames(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.prisma.db.staff.findMany({ select: { id: true, displayName: true } });
    return new Map(rows.map(({ id, displayName }) => [id, displayName]));
  }
}
