import { Injectable } from '@nestjs/common';
import { stepsOf, type Template } from '#libs/checklist';
import type { DbClient, Prisma, Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';
import { MOST_ROWS } from '../../../platform/paging.ts';

/** A job as the Run-up needs it, as a query. */
export const RUN_UP_JOB = {
  id: true,
  number: true,
  keyTag: true,
  stage: true,
  vehicleId: true,
  vehicle: { select: { make: true, model: true, registration: true, engineCode: true, thermostatKind: true } },
  customer: { select: { name: true } },
  template: { select: { definition: true } },
  debts: { where: { endedAt: null, kind: 'after-log' }, select: { dueOn: true } },
  choice: {
    select: {
      variant: {
        select: {
          statements: {
            where: { feature: 'openingTemperatureC', withdrawnAt: null },
            orderBy: { saidAt: 'desc' },
            take: 1,
            select: { figure: true },
          },
        },
      },
    },
  },
} as const;

type Row = Prisma.JobGetPayload<{ select: typeof RUN_UP_JOB }>;

/** A job as the Run-up sees it. */
export interface RunUpJob extends Omit<Row, 'template' | 'choice'> {
  /** Its card has a step for a log after the repair; a mere diagnosis has none. */
  asksProof: boolean;
  /** The opening temperature stated of the part that was chosen for it, °C. */
  chosenNominalC: number | null;
}

export function toRunUpJob<T extends Row>({ template, choice, ...job }: T): Omit<T, 'template' | 'choice'> & RunUpJob {
  const steps = stepsOf(template.definition as unknown as Template);
  return {
    ...job,
    asksProof: steps.some(({ debt }) => debt?.kind === 'after-log'),
    chosenNominalC: choice?.variant.statements[0]?.figure?.toNumber() ?? null,
  };
}

const GONE = ['keys-out', 'squared', 'fell-through'];

export type RunUpJobRow = Awaited<ReturnType<RunUpJobsRepository['list']>>[number];

@Injectable()
export class RunUpJobsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async find(id: string, db: DbClient = this.prisma.db): Promise<RunUpJob | undefined> {
    const row = await db.job.findUnique({ where: { id }, select: RUN_UP_JOB });
    return row ? toRunUpJob(row) : undefined;
  }

  /** Holds the job's row until the transaction ends: whoever else changes it waits. */
  async lock(tx: Tx, id: string): Promise<void> {
    await tx.$queryRaw`select 1 from job where id = ${id}::uuid for update`;
  }

  /** Those here, those that owe their proof, and those with a log since `since`. */
  async list(since: Date) {
    const rows = await this.prisma.db.job.findMany({
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
        proofSheets: { orderBy: { version: 'desc' }, take: 1, select: { outcome: true } },
      },
    });
    return rows.map(toRunUpJob);
  }

  async staffNames(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.prisma.db.staff.findMany({ select: { id: true, displayName: true } });
    return new Map(rows.map(({ id, displayName }) => [id, displayName]));
  }
}
