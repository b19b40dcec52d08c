import { Injectable } from '@nestjs/common';
import type { DbClient } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';
import type { ChosenVariant, EarlierTorque } from './card-known.ts';

@Injectable()
export class CardFiguresRepository {
  constructor(private readonly prisma: PrismaService) {}

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
