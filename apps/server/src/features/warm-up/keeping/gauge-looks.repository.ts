import { Injectable } from '@nestjs/common';
import type { GaugeObservation } from '#libs/warm-up';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';
import type { LogRole } from '../log-setting.ts';

export interface GaugeLook {
  role: LogRole;
  observation: GaugeObservation;
  lookedOn: Date;
  keptById: string;
}

@Injectable()
export class GaugeLooksRepository {
  constructor(private readonly prisma: PrismaService) {}

  async add(tx: Tx, jobId: string, { observation, at, ...look }: GaugeLook & { at: Date }): Promise<void> {
    const { reading, minutesDriven, outsideC } = observation;
    await tx.gaugeLook.create({ data: { jobId, ...look, reading, minutesDriven, outsideC: outsideC ?? null, keptAt: at } });
  }

  async ofJob(jobId: string, db: DbClient = this.prisma.db): Promise<GaugeLook[]> {
    const rows = await db.gaugeLook.findMany({ where: { jobId }, orderBy: [{ lookedOn: 'asc' }, { keptAt: 'asc' }] });
    return rows.map(({ role, reading, minutesDriven, outsideC, lookedOn, keptById }) => ({
      role: role as LogRole,
      lookedOn,
      keptById,
      observation: {
        reading: reading as GaugeObservation['reading'],
        minutesDriven,
        ...(outsideC === null ? {} : { outsideC: outsideC.toNumber() }),
      },
    }));
  }
}
