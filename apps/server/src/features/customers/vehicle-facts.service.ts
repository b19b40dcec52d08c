import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { PrismaService } from '../../platform/database.ts';
import { currentStaff } from '../../platform/request-context.ts';

/** What somebody stated about a car: its capacity, its cap, the torque of a joint with the page of the manual. */
export interface StatedFact<Key extends string = string> {
  id: string;
  key: Key;
  figure: number | null;
  unit: string;
  words: string;
  source: string;
  jobId: string | null;
  enteredBy: string;
  enteredAt: Date;
}

export interface FactToState {
  vehicleId: string;
  jobId: string;
  key: string;
  figure: number | null;
  unit: string;
  words: string;
  source: string;
}

/** A car's memory: statements stand beside one another, each with who made it, and none is ever written over. */
@Injectable()
export class VehicleFacts {
  constructor(
    private readonly prisma: PrismaService,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** Those of these kinds that stand, newest first. */
  async of<Key extends string>(vehicleId: string, keys: readonly Key[], db: DbClient = this.prisma.db): Promise<StatedFact<Key>[]> {
    const rows = await db.vehicleFact.findMany({
      where: { vehicleId, key: { in: [...keys] }, withdrawnAt: null },
      orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
    });
    const people = await db.staff.findMany({
      where: { id: { in: rows.map(({ enteredById }) => enteredById) } },
      select: { id: true, displayName: true },
    });
    const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
    return rows.map(({ id, key, figure, unit, words, source, jobId, enteredById, enteredAt }) => ({
      ...{ id, key: key as Key, figure: figure?.toNumber() ?? null, unit, words, source, jobId, enteredAt },
      enteredBy: names.get(enteredById) ?? 'somebody',
    }));
  }

  /** @returns the statement's id. */
  async state(tx: Tx, fact: FactToState): Promise<string> {
    const data = { ...fact, enteredById: currentStaff().staffId, enteredAt: this.clock.now() };
    const { id } = await tx.vehicleFact.create({ data, select: { id: true } });
    await this.audit.record(tx, { action: 'stated', subject: 'vehicle-fact', subjectId: id, after: { ...fact } });
    return id;
  }

  /**
   * Takes a statement out of use; it stays on record with the reason.
   *
   * @returns false where it is not this car's or was withdrawn before.
   */
  async withdraw(tx: Tx, { id, vehicleId, why }: { id: string; vehicleId: string; why: string }): Promise<boolean> {
    const { count } = await tx.vehicleFact.updateMany({
      where: { id, vehicleId, withdrawnAt: null },
      data: { withdrawnAt: this.clock.now(), withdrawnWhy: why },
    });
    if (count === 0) return false;
    await this.audit.record(tx, { action: 'withdrawn', subject: 'vehicle-fact', subjectId: id, after: { why } });
    return true;
  }
}
