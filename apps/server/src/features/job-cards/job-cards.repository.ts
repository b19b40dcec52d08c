import { Injectable } from '@nestjs/common';
import type { Action, Template } from '#libs/checklist';
import { type DbClient, Prisma, type Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';
import type { CardRow } from './card-known.ts';

/** An action as it is written down. */
export interface ReceivedAction {
  action: Action;
  receivedAt: Date;
  /** Null where it fits. */
  difference: string | null;
}

@Injectable()
export class JobCardsRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** Holds the job's row until the transaction ends: the order of receipt is decided here. */
  async lock(tx: Tx, jobId: string): Promise<void> {
    await tx.$queryRaw`select 1 from job where id = ${jobId}::uuid for update`;
  }

  async find(jobId: string, db: DbClient = this.prisma.db): Promise<CardRow | undefined> {
    const row = await db.job.findUnique({
      where: { id: jobId },
      select: {
        id: true,
        number: true,
        stage: true,
        keyTag: true,
        version: true,
        vehicleId: true,
        complaint: true,
        template: { select: { definition: true } },
        vehicle: { select: { registration: true, make: true, model: true, engineCode: true, thermostatKind: true } },
        customer: { select: { name: true } },
        stageChanges: {
          where: { actionId: null, to: { in: ['spoken-of', 'expected', 'standing'] } },
          orderBy: { id: 'desc' },
          take: 1,
          select: { to: true },
        },
      },
    });
    if (!row) return undefined;
    const { template, stageChanges, ...rest } = row;
    return { ...rest, definition: template.definition as unknown as Template, startStage: stageChanges[0]?.to ?? 'spoken-of' };
  }

  /** In the order of receipt. */
  async actions(jobId: string, db: DbClient = this.prisma.db): Promise<Action[]> {
    const rows = await db.jobAction.findMany({ where: { jobId }, orderBy: { seq: 'asc' } });
    return rows.map((row) => ({
      id: row.id,
      card: row.jobId,
      kind: row.kind as Action['kind'],
      step: row.step ?? '',
      value: row.value,
      readAt: row.readAt.toISOString(),
      by: row.byId,
      byProof: row.byProof as Action['byProof'],
      ...(row.deviceId === null ? {} : { deviceId: row.deviceId }),
      ...(row.deviceSeq === null ? {} : { deviceSeq: row.deviceSeq }),
    }));
  }

  /** In this order. */
  async add(tx: Tx, received: readonly ReceivedAction[]): Promise<void> {
    await tx.jobAction.createMany({
      data: received.map(({ action, receivedAt, difference }) => ({
        id: action.id,
        jobId: action.card,
        kind: action.kind,
        step: action.step,
        value: action.value === null ? Prisma.JsonNull : (action.value as Prisma.InputJsonValue),
        readAt: new Date(action.readAt),
        receivedAt,
        byId: action.by,
        byProof: action.byProof,
        deviceId: action.deviceId ?? null,
        deviceSeq: action.deviceSeq ?? null,
        difference,
      })),
    });
  }

  /** Those of these actions that are on record, on whichever card. */
  async known(ids: readonly string[], db: DbClient): Promise<Set<string>> {
    const rows = await db.jobAction.findMany({ where: { id: { in: [...ids] } }, select: { id: true } });
    return new Set(rows.map(({ id }) => id));
  }

  async staffRoles(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.prisma.db.staff.findMany({ select: { id: true, role: true } });
    return new Map(rows.map(({ id, role }) => [id, role]));
  }

  async staffNames(db: DbClient = this.prisma.db): Promise<ReadonlyMap<string, string>> {
    const rows = await db.staff.findMany({ select: { id: true, displayName: true } });
    return new Map(rows.map(({ id, displayName }) => [id, displayName]));
  }
}
