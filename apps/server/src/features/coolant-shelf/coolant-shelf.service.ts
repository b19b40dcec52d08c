import { Injectable } from '@nestjs/common';
import type { Glycol, ProductLabel } from '#libs/coolant';
import type { DbClient } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

/** Coolant on the shelf, as its label tells. */
export interface ShelfProduct {
  id: string;
  name: string;
  glycol: Glycol;
  technology: string;
  approval: string;
  isReadyMixed: boolean;
  label: ProductLabel | null;
  /** Volume % of product. */
  minimumPercent: number;
  maximumPercent: number;
  pricePerL: string;
  /** How long it lasts, whichever comes first. */
  serviceYears: number | null;
  serviceKm: number | null;
}

/** The coolants that the workshop keeps. */
@Injectable()
export class CoolantShelf {
  constructor(private readonly prisma: PrismaService) {}

  async onTheShelf(db: DbClient = this.prisma.db): Promise<ShelfProduct[]> {
    const rows = await db.coolantProduct.findMany({ where: { isActive: true }, orderBy: { name: 'asc' } });
    return rows.map((row) => ({
      id: row.id,
      name: row.name,
      glycol: row.glycol === 'propylene' ? 'propylene' : 'ethylene',
      technology: row.technology,
      approval: row.approval,
      isReadyMixed: row.isReadyMixed,
      label:
        row.labelProduct === null || row.labelWater === null || row.labelFreezesC === null
          ? null
          : {
              partsProduct: row.labelProduct.toNumber(),
              partsWater: row.labelWater.toNumber(),
              freezingPointC: row.labelFreezesC.toNumber(),
            },
      minimumPercent: row.minProductPct.toNumber(),
      maximumPercent: row.maxProductPct.toNumber(),
      pricePerL: row.pricePerL.toFixed(2),
      serviceYears: row.serviceYears,
      serviceKm: row.serviceKm,
    }));
  }
}
