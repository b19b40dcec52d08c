import { Injectable } from '@nestjs/common';
import type { HeaterUse, Sample, ThermostatKind, Understood, WarmUpAnalysis } from '#libs/warm-up';
import type { DbClient, Prisma, Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';
import type { LogRole, LogSource } from '../log-setting.ts';
import { packSamples, unpackSamples } from './pack-samples.ts';

/** A log that was kept, without its readings. */
export interface KeptLog {
  id: string;
  jobId: string;
  role: LogRole;
  source: LogSource;
  fileName: string;
  understood: Understood | null;
  loggedOn: Date;
  thermostatKind: ThermostatKind;
  nominalOpeningC: number | null;
  heater: HeaterUse;
  sampleCount: number;
  analysis: WarmUpAnalysis;
  keptById: string;
  keptAt: Date;
  withdrawal: { why: string; byId: string; at: Date } | null;
}

export type NewLog = Omit<KeptLog, 'id' | 'withdrawal' | 'sampleCount'> & {
  vehicleId: string;
  shape: string;
  answers: object;
  samples: readonly Sample[];
};

const WITHOUT_SAMPLES = {
  id: true,
  jobId: true,
  role: true,
  source: true,
  fileName: true,
  understood: true,
  loggedOn: true,
  thermostatKind: true,
  nominalOpeningC: true,
  heater: true,
  sampleCount: true,
  analysis: true,
  keptById: true,
  keptAt: true,
  withdrawal: { select: { why: true, byId: true, at: true } },
} as const;

type Row = Prisma.WarmUpLogGetPayload<{ select: typeof WITHOUT_SAMPLES }>;

const toLog = (row: Row): KeptLog => ({
  ...row,
  role: row.role as LogRole,
  source: row.source as LogSource,
  understood: row.source === 'file' ? (row.understood as unknown as Understood) : null,
  thermostatKind: row.thermostatKind as ThermostatKind,
  nominalOpeningC: row.nominalOpeningC?.toNumber() ?? null,
  heater: row.heater as HeaterUse,
  analysis: row.analysis as unknown as WarmUpAnalysis,
});

@Injectable()
export class LogsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async add(tx: Tx, { samples, understood, analysis, answers, nominalOpeningC, ...log }: NewLog): Promise<string> {
    const row = await tx.warmUpLog.create({
      data: {
        ...log,
        nominalOpeningC,
        understood: (understood ?? {}) as unknown as Prisma.InputJsonObject,
        answers: answers,
        analysis: analysis as unknown as Prisma.InputJsonObject,
        sampleCount: samples.length,
        samples: await packSamples(samples),
        verdict: analysis.verdict,
        confidence: analysis.confidence,
      },
      select: { id: true },
    });
    return row.id;
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<KeptLog | undefined> {
    const row = await db.warmUpLog.findUnique({ where: { id }, select: WITHOUT_SAMPLES });
    return row ? toLog(row) : undefined;
  }

  /** In the order they were driven. */
  async ofJob(jobId: string, db: DbClient = this.prisma.db): Promise<KeptLog[]> {
    const rows = await db.warmUpLog.findMany({
      where: { jobId },
      orderBy: [{ loggedOn: 'asc' }, { keptAt: 'asc' }],
      select: WITHOUT_SAMPLES,
    });
    return rows.map(toLog);
  }

  /** What the car's other jobs have, the newest first. */
  async ofVehicleBefore(vehicleId: string, jobId: string): Promise<(KeptLog & { jobNumber: number })[]> {
    const rows = await this.prisma.db.warmUpLog.findMany({
      where: { vehicleId, jobId: { not: jobId }, withdrawal: null },
      orderBy: [{ loggedOn: 'desc' }, { keptAt: 'desc' }],
      take: 10,
      select: { ...WITHOUT_SAMPLES, job: { select: { number: true } } },
    });
    return rows.map(({ job, ...row }) => ({ ...toLog(row), jobNumber: job.number }));
  }

  async samples(id: string, db: DbClient = this.prisma.db): Promise<Sample[]> {
    const { samples } = await db.warmUpLog.findUniqueOrThrow({ where: { id }, select: { samples: true } });
    return unpackSamples(samples);
  }

  /** @returns false where it had been withdrawn before */
  async withdraw(tx: Tx, logId: string, { why, byId, at }: { why: string; byId: string; at: Date }): Promise<boolean> {
    const { count } = await tx.warmUpWithdrawal.createMany({ data: [{ logId, why, byId, at }], skipDuplicates: true });
    return count > 0;
  }
}
