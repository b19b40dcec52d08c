import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';
import type { FactKey } from './fact-keys.ts';
import { FACT_KEYS } from './fact-keys.ts';

/** What somebody stated about the car's cooling system. */
export interface StatedFact {
  id: string;
  key: FactKey;
  figure: number | null;
  unit: string;
  words: string;
  source: string;
  jobId: string | null;
  enteredBy: string;
  enteredAt: Date;
}

export interface NewFact {
  vehicleId: string;
  jobId: string;
  key: FactKey;
  figure: number | null;
  unit: string;
  words: string;
  source: string;
  enteredById: string;
  enteredAt: Date;
}

@Injectable()
export class VehicleFactsRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** Those that stand, newest first. */
  async of(vehicleId: string, db: DbClient = this.prisma.db): Promise<StatedFact[]> {
    const rows = await db.vehicleFact.findMany({
      where: { vehicleId, key: { in: [...FACT_KEYS] }, withdrawnAt: null },
      orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
    });
    const people = await db.staff.findMany({
      where: { id: { in: rows.map(({ enteredById }) => enteredById) } },
      select: { id: true, displayName: true },
    });
    const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
    return rows.map(({ id, key, figure, unit, words, source, jobId, enteredById, enteredAt }) => ({
      id,
      key: key as FactKey,
      figure: figure?.toNumber() ?? null,
      unit,
      words,
      source,
      jobId,
      enteredBy: names.get(enteredById) ?? 'somebody',
      enteredAt,
    }));
  }

  async add(tx: Tx, fact: NewFact): Promise<string> {
    return (await tx.vehicleFact.create({ data: fact, select: { id: true } })).id;
  }

  /** @returns false where it is not this car's or was withdrawn before. */
  async withdraw(tx: Tx, { id, vehicleId, at, why }: { id: string; vehicleId: string; at: Date; why: string }): Promise<boolean> {
    const { count } = await tx.vehicleFact.updateMany({
      where: { id, vehicleId, withdrawnAt: null },
      data: { withdrawnAt: at, withdrawnWhy: why },
    });
    return count === 1;
  }
}
