import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import type { ArrivalReason, MoneyKind, UnitPlace, WindowStart } from '#libs/unit-life';
import { PrismaService } from '../../platform/database.ts';
import { unitCodeText } from './unit-code.ts';

/** One piece, with what decides where it can go. Money and percentages as decimal text. */
export interface Unit {
  id: string;
  code: string;
  /** The code as it stands on the label. */
  label: string;
  place: UnitPlace;
  arrivalReason: ArrivalReason;
  isOpened: boolean;
  arrivedAt: Date | null;
  returnBy: Date | null;
  createdAt: Date;
  /** Its key tag only while the car is here: afterwards the tag is another car's. */
  job: { id: string; number: number; keyTag: number | null } | null;
  /** The same as it is called on the floor; empty for nobody's. */
  whose: string;
  orderLine: { priceNet: string; order: { id: string; number: number; orderedAt: Date } } | null;
  variant: { id: string; partNumber: string; name: string; priceNet: string; supplier: UnitSupplier };
  money: MoneyRow[];
  /** Charged less what came back or was given up. */
  openNet: string;
}

interface UnitSupplier {
  id: string;
  name: string;
  returnDays: number;
  windowStart: WindowStart;
  restockingPct: string;
  returnCarriage: string;
  unopenedOnly: boolean;
  daysToCredit: number;
}

/** An entry in a unit's account, as it is kept. */
export interface MoneyRow {
  id: string;
  kind: MoneyKind;
  amountNet: string;
  at: Date;
  byId: string | null;
  reference: string;
  why: string;
}

export interface MoveRow {
  from: UnitPlace;
  to: UnitPlace;
  at: Date;
  byId: string | null;
  why: string;
  evidence: string;
}

export interface NewUnit {
  code: string;
  variantId: string;
  orderLineId: string | null;
  arrivalReason: string;
  jobId: string | null;
  createdAt: Date;
}

export interface NewMove extends MoveRow {
  unitId: string;
}

export type UnitFacts = Partial<{ isOpened: boolean; arrivedAt: Date; returnBy: Date | null; jobId: string | null }>;

const WHOLE = {
  job: { select: { id: true, number: true, keyTag: true, stage: true } },
  orderLine: { select: { priceNet: true, order: { select: { id: true, number: true, orderedAt: true } } } },
  variant: {
    select: {
      id: true,
      partNumber: true,
      name: true,
      priceNet: true,
      supplier: {
        select: {
          id: true,
          name: true,
          returnDays: true,
          windowStart: true,
          returnCarriage: true,
          restockingPct: true,
          unopenedOnly: true,
          daysToCredit: true,
        },
      },
    },
  },
  money: { orderBy: { id: 'asc' }, select: { id: true, kind: true, amountNet: true, at: true, byId: true, reference: true, why: true } },
} as const;

const GONE = new Set(['keys-out', 'squared', 'fell-through']);

function toJob(row: { id: string; number: number; keyTag: number | null; stage: string } | null): Unit['job'] {
  return row && { id: row.id, number: row.number, keyTag: GONE.has(row.stage) ? null : row.keyTag };
}

function whoseText(job: Unit['job']): string {
  if (job === null) return '';
  return job.keyTag === null ? `job ${job.number}` : `key ${job.keyTag}`;
}

interface SupplierRow extends Omit<UnitSupplier, 'windowStart' | 'restockingPct' | 'returnCarriage'> {
  windowStart: string;
  restockingPct: { toString: () => string };
  returnCarriage: { toFixed: (places: number) => string };
}

const toTerms = (row: SupplierRow): UnitSupplier => ({
  ...row,
  windowStart: row.windowStart as WindowStart,
  restockingPct: row.restockingPct.toString(),
  returnCarriage: row.returnCarriage.toFixed(2),
});

@Injectable()
export class UnitsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async find(id: string, db: DbClient = this.prisma.db): Promise<Unit | undefined> {
    return (await this.many({ id }, db))[0];
  }

  async byCode(code: string, db: DbClient = this.prisma.db): Promise<Unit | undefined> {
    return (await this.many({ code }, db))[0];
  }

  async byIds(ids: readonly string[]): Promise<Unit[]> {
    return ids.length === 0 ? [] : this.many({ id: { in: [...ids] } }, this.prisma.db);
  }

  async ofJob(jobId: string, db: DbClient = this.prisma.db): Promise<Unit[]> {
    return this.many({ jobId }, db);
  }

  async at(places: readonly string[], db: DbClient = this.prisma.db): Promise<Unit[]> {
    return this.many({ place: { in: [...places] } }, db);
  }

  async toReturnTo(supplierId: string, most: number): Promise<Unit[]> {
    return (await this.many({ place: 'to-return', variant: { supplierId } }, this.prisma.db)).slice(0, most);
  }

  /** Free pieces of these variants on our own shelf. */
  async stocked(variantIds: readonly string[], db: DbClient = this.prisma.db): Promise<Unit[]> {
    return this.many({ place: 'stocked', variantId: { in: [...variantIds] } }, db);
  }

  async ofOrder(orderId: string): Promise<Unit[]> {
    return this.many({ orderLine: { orderId } }, this.prisma.db);
  }

  private async many(where: object, db: DbClient): Promise<Unit[]> {
    const rows = await db.partUnit.findMany({ where, include: WHOLE, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] });
    return rows.map(({ orderLine, variant, money, openNet, ...row }) => ({
      ...row,
      openNet: openNet.toFixed(2),
      label: unitCodeText(row.code),
      job: toJob(row.job),
      whose: whoseText(toJob(row.job)),
      place: row.place as UnitPlace,
      arrivalReason: row.arrivalReason as ArrivalReason,
      orderLine: orderLine && { ...orderLine, priceNet: orderLine.priceNet.toFixed(2) },
      variant: {
        ...variant,
        priceNet: variant.priceNet.toFixed(2),
        supplier: toTerms(variant.supplier),
      },
      money: money.map((entry) => ({
        ...entry,
        id: String(entry.id),
        kind: entry.kind as MoneyKind,
        amountNet: entry.amountNet.toFixed(2),
      })),
    }));
  }

  async moves(unitId: string): Promise<MoveRow[]> {
    const rows = await this.prisma.db.unitMove.findMany({
      where: { unitId },
      orderBy: { id: 'asc' },
      select: { from: true, to: true, at: true, byId: true, why: true, evidence: true },
    });
    return rows.map((row) => ({ ...row, from: row.from as UnitPlace, to: row.to as UnitPlace }));
  }

  /** When each of these units was last handed over. */
  async sentAt(unitIds: readonly string[]): Promise<ReadonlyMap<string, { at: Date; evidence: string }>> {
    const rows = await this.prisma.db.unitMove.findMany({
      where: { unitId: { in: [...unitIds] }, to: 'handed-over' },
      orderBy: { id: 'asc' },
      select: { unitId: true, at: true, evidence: true },
    });
    return new Map(rows.map(({ unitId, at, evidence }) => [unitId, { at, evidence }]));
  }

  async isTaken(code: string, tx: Tx): Promise<boolean> {
    return (await tx.partUnit.count({ where: { code } })) > 0;
  }

  async create(tx: Tx, unit: NewUnit): Promise<string> {
    return (await tx.partUnit.create({ data: unit, select: { id: true } })).id;
  }

  /** The database carries the unit to its new place, or refuses (see the migrations: RW002, RW003, RW005). */
  async addMove(tx: Tx, move: NewMove): Promise<void> {
    await tx.unitMove.create({ data: move, select: { id: true } });
  }

  async addMoney(tx: Tx, unitId: string, entry: Omit<MoneyRow, 'id'>): Promise<string> {
    return String((await tx.unitMoney.create({ data: { ...entry, unitId }, select: { id: true } })).id);
  }

  async setFacts(tx: Tx, id: string, facts: UnitFacts): Promise<void> {
    await tx.partUnit.update({ where: { id }, data: facts, select: { id: true } });
  }

  /** Holds the unit's row, so that its place and money are decided on what is true. */
  async lock(tx: Tx, id: string): Promise<void> {
    await tx.$queryRaw`select 1 from part_unit where id = ${id}::uuid for update`;
  }

  async staffNames(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.prisma.db.staff.findMany({ select: { id: true, displayName: true } });
    return new Map(rows.map(({ id, displayName }) => [id, displayName]));
  }
}
