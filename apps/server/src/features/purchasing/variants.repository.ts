import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import type { PartFamily } from '#libs/fitment';
import { PrismaService } from '../../platform/database.ts';
import { type StatedValue, statedValues, type Statement } from './stated-values.ts';

export interface FamilyRow {
  id: string;
  family: PartFamily;
}

export interface Listing {
  id: string;
  engineCode: string;
  builtFrom: Date | null;
  builtTo: Date | null;
  catalogue: string;
}

/** A part number with all that is said of it; money as decimal text. */
export interface Variant {
  id: string;
  partNumber: string;
  name: string;
  priceNet: string;
  coreCharge: string;
  family: PartFamily;
  supplier: { id: string; name: string; unopenedOnly: boolean; restockingPct: string };
  statements: Statement[];
  /** What each feature is taken to be. */
  stated: ReadonlyMap<string, StatedValue>;
  listings: Listing[];
}

export interface NewVariant {
  familyId: string;
  supplierId: string;
  partNumber: string;
  name: string;
  priceNet: string;
  coreCharge: string;
}

export type NewListing = Omit<Listing, 'id'>;

export interface NewStatement {
  feature: string;
  figure: number | null;
  words: string | null;
  provenance: string;
  saidById: string;
  saidAt: Date;
}

/** A stretch of days in which a car was built; null ends are open. */
export interface Built {
  from: Date | null;
  to: Date | null;
}

const WHOLE = {
  family: { select: { features: true } },
  supplier: { select: { id: true, name: true, unopenedOnly: true, restockingPct: true } },
  statements: { where: { withdrawnAt: null }, orderBy: { saidAt: 'desc' } },
  listings: { orderBy: { engineCode: 'asc' } },
} as const;

const MOST = 200;

@Injectable()
export class VariantsRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** The newest version of each family. */
  async families(db: DbClient = this.prisma.db): Promise<FamilyRow[]> {
    const rows = await db.partFamily.findMany({ distinct: ['key'], orderBy: [{ key: 'asc' }, { version: 'desc' }] });
    return rows.map(({ id, features }) => ({ id, family: features as unknown as PartFamily }));
  }

  /** What the catalogues list for an engine, narrowed by when the car was built. */
  async listedFor(engineCode: string, { from, to }: Built, db: DbClient = this.prisma.db): Promise<Variant[]> {
    const built = {
      AND: [
        to === null ? {} : { OR: [{ builtFrom: null }, { builtFrom: { lte: to } }] },
        from === null ? {} : { OR: [{ builtTo: null }, { builtTo: { gte: from } }] },
      ],
    };
    return this.many(db, { listings: { some: { engineCode, ...built } } });
  }

  async search(words: string): Promise<Variant[]> {
    const contains = { contains: words, mode: 'insensitive' } as const;
    const found = {
      OR: [
        { partNumber: contains },
        { name: contains },
        { supplier: { name: contains } },
        { listings: { some: { engineCode: contains } } },
      ],
    };
    return this.many(this.prisma.db, words === '' ? {} : found);
  }

  async ofSupplier(supplierId: string): Promise<Variant[]> {
    return this.many(this.prisma.db, { supplierId });
  }

  async byIds(ids: readonly string[], db: DbClient = this.prisma.db): Promise<Variant[]> {
    return this.many(db, { id: { in: [...ids] } });
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<Variant | undefined> {
    return (await this.byIds([id], db))[0];
  }

  private async many(db: DbClient, where: object): Promise<Variant[]> {
    const rows = await db.partVariant.findMany({ where, include: WHOLE, orderBy: [{ partNumber: 'asc' }, { id: 'asc' }], take: MOST });
    return rows.map((row) => {
      const statements = row.statements.map((said) => ({ ...said, figure: said.figure?.toNumber() ?? null }));
      return {
        id: row.id,
        partNumber: row.partNumber,
        name: row.name,
        priceNet: row.priceNet.toFixed(2),
        coreCharge: row.coreCharge.toFixed(2),
        family: row.family.features as unknown as PartFamily,
        supplier: { ...row.supplier, restockingPct: row.supplier.restockingPct.toString() },
        statements,
        stated: statedValues(statements),
        listings: row.listings,
      };
    });
  }

  async create(tx: Tx, variant: NewVariant): Promise<string> {
    return (await tx.partVariant.create({ data: variant, select: { id: true } })).id;
  }

  async list(tx: Tx, variantId: string, listing: NewListing): Promise<void> {
    await tx.catalogueListing.create({ data: { ...listing, variantId } });
  }

  async state(tx: Tx, variantId: string, statements: readonly NewStatement[]): Promise<void> {
    await tx.variantStatement.createMany({ data: statements.map((statement) => ({ ...statement, variantId })) });
  }

  /** @returns the variant, or undefined where the statement is withdrawn or not there. */
  async withdraw(tx: Tx, statementId: string, at: Date): Promise<string | undefined> {
    const { count } = await tx.variantStatement.updateMany({ where: { id: statementId, withdrawnAt: null }, data: { withdrawnAt: at } });
    if (count === 0) return undefined;
    return (await tx.variantStatement.findUniqueOrThrow({ where: { id: statementId }, select: { variantId: true } })).variantId;
  }

  async reprice(tx: Tx, id: string, priceNet: string): Promise<void> {
    await tx.partVariant.update({ where: { id }, data: { priceNet } });
  }
}
