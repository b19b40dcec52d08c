import { Injectable } from '@nestjs/common';
import { type DbClient, ifCurrent, type Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

/** Money and percentages are decimal text. */
export interface SupplierFields {
  name: string;
  phone: string;
  email: string;
  accountNumber: string;
  returnDays: number;
  windowStart: string;
  restockingPct: string;
  returnCarriage: string;
  carriage: string;
  unopenedOnly: boolean;
  daysToCredit: number;
}

export interface Supplier extends SupplierFields {
  id: string;
  version: number;
}

interface SupplierRow extends Omit<Supplier, 'restockingPct' | 'returnCarriage' | 'carriage'> {
  restockingPct: { toString: () => string };
  returnCarriage: { toFixed: (places: number) => string };
  carriage: { toFixed: (places: number) => string };
}

const toSupplier = (row: SupplierRow): Supplier => ({
  ...row,
  restockingPct: row.restockingPct.toString(),
  returnCarriage: row.returnCarriage.toFixed(2),
  carriage: row.carriage.toFixed(2),
});

@Injectable()
export class SuppliersRepository {
  constructor(private readonly prisma: PrismaService) {}

  async all(): Promise<Supplier[]> {
    return (await this.prisma.db.supplier.findMany({ orderBy: { name: 'asc' } })).map(toSupplier);
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<Supplier | undefined> {
    const row = await db.supplier.findUnique({ where: { id } });
    return row ? toSupplier(row) : undefined;
  }

  async create(tx: Tx, fields: SupplierFields): Promise<string> {
    return (await tx.supplier.create({ data: fields, select: { id: true } })).id;
  }

  /** @returns undefined where the version is no longer the current one. */
  async change(tx: Tx, id: string, { version, fields }: { version: number; fields: SupplierFields }): Promise<Supplier | undefined> {
    const row = await ifCurrent(tx.supplier.update({ where: { id, version }, data: { ...fields, version: { increment: 1 } } }));
    return row ? toSupplier(row) : undefined;
  }
}
