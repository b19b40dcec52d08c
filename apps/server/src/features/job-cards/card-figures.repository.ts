import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

/** What somebody stated about the car, newest first. */
export interface StatedFact {
  key: string;
  figure: number | null;
  unit: string;
  words: string;
  source: string;
  enteredById: string;
  enteredAt: Date;
}

/** A torque that was used on this engine before, with where it is printed. */
export interface EarlierTorque {
  jobNumber: number;
  setAt: number;
  unit: string;
  document: string;
  page: string;
}

export interface ChosenVariant {
  partNumber: string;
  name: string;
  probability: number;
}

export interface NewFact {
  vehicleId: string;
  jobId: string;
  key: string;
  figure: number;
  unit: string;
  words: string;
  source: string;
  enteredById: string;
  enteredAt: Date;
}

const ON_THE_CARD = ['capacity', 'strength', 'freezing-point', 'technology', 'torque'];

@Injectable()
export class CardFiguresRepository {
  constructor(private readonly prisma: PrismaService) {}

  async facts(vehicleId: string, db: DbClient = this.prisma.db): Promise<StatedFact[]> {
    const rows = await db.vehicleFact.findMany({
      where: { vehicleId, key: { in: ON_THE_CARD }, withdrawnAt: null },
      orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
      select: { key: true, figure: true, unit: true, words: true, source: true, enteredById: true, enteredAt: true },
    });
    return rows.map((row) => ({ ...row, figure: row.figure?.toNumber() ?? null }));
  }

  async addFact(tx: Tx, fact: NewFact): Promise<string> {
    return (await tx.vehicleFact.create({ data: fact, select: { id: true } })).id;
  }

  async variant(jobId: string, db: DbClient = this.prisma.db): Promise<ChosenVariant | null> {
    const row = await db.fitmentChoice.findUnique({
      where: { jobId },
      select: { probability: true, variant: { select: { partNumber: true, name: true } } },
    });
    return row && { ...row.variant, probability: row.probability.toNumber() };
  }

  /** On the same engine, or on this car where its engine code is not known; what was taken back is left out. */
  async earlierTorques(job: { id: string; vehicleId: string; engineCode: string }): Promise<EarlierTorque[]> {
    return this.prisma.db.$queryRaw<EarlierTorque[]>`
      select max(j.number) as "jobNumber", (a.value ->> 'setAt')::float8 as "setAt", a.value ->> 'unit' as unit,
        a.value ->> 'document' as document, a.value ->> 'page' as page
      from job_action a
      join job j on j.id = a.job_id
      join vehicle v on v.id = j.vehicle_id
      where a.step = 'torqued' and a.kind in ('record', 'pass') and a.difference is null and j.id <> ${job.id}::uuid
        and (v.id = ${job.vehicleId}::uuid or (v.engine_code <> '' and v.engine_code = ${job.engineCode}))
        and jsonb_typeof(a.value -> 'setAt') = 'number'
        and not exists (select from job_action t where t.job_id = a.job_id and t.step = a.step and t.kind = 'take-back' and t.seq > a.seq)
      group by 2, 3, 4, 5
      order by max(a.seq) desc limit 3`;
  }

  /** When the last action of this card reached the workshop's server. */
  async lastReceived(jobId: string): Promise<Date | null> {
    const row = await this.prisma.db.jobAction.findFirst({ where: { jobId }, orderBy: { seq: 'desc' }, select: { receivedAt: true } });
    return row?.receivedAt ?? null;
  }

  /** Those of these actions that are on another card. */
  async onOtherCards(jobId: string, ids: readonly string[], db: DbClient = this.prisma.db): Promise<string[]> {
    const rows = await db.jobAction.findMany({ where: { id: { in: [...ids] }, jobId: { not: jobId } }, select: { id: true } });
    return rows.map(({ id }) => id);
  }
}
