import { Injectable } from '@nestjs/common';
import { ifCurrent, Prisma, type Tx } from '#libs/db';
import type { MarkupRule } from '#libs/money';
import { PrismaService } from '../../../platform/database.ts';

export interface TillSettings {
  companyNumber: string;
  paper: string;
  pdfForm: string;
  vatCategory: string;
  exemptionWords: string;
  cashAccounting: boolean;
  simplifiedLimit: string | null;
  depositForm: string;
  partsRule: MarkupRule | null;
  consumablesPct: string;
  consumablesMost: string | null;
}

@Injectable()
export class TillSettingsRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** @returns whether nobody had changed them in between. */
  async save(tx: Tx, { partsRule, ...settings }: TillSettings, version: number): Promise<boolean> {
    const rule = partsRule === null ? Prisma.DbNull : (partsRule as unknown as Prisma.InputJsonObject);
    const data = { ...settings, partsRule: rule, version: { increment: 1 } };
    return (await ifCurrent(tx.workshop.update({ where: { id: 1, version }, data }))) !== undefined;
  }

  /** The newest version of each template with its price, if it has one. */
  async menu(): Promise<{ key: string; name: string; priceNet: string | null }[]> {
    const [templates, prices] = await Promise.all([
      this.prisma.db.jobTemplate.findMany({
        distinct: ['key'],
        orderBy: [{ key: 'asc' }, { version: 'desc' }],
        select: { key: true, name: true },
      }),
      this.prisma.db.menuPrice.findMany(),
    ]);
    const known = new Map(prices.map(({ templateKey, priceNet }) => [templateKey, priceNet.toFixed(2)]));
    return templates.map(({ key, name }) => ({ key, name, priceNet: known.get(key) ?? null }));
  }

  async hasTemplate(tx: Tx, key: string): Promise<boolean> {
    return (await tx.jobTemplate.count({ where: { key } })) > 0;
  }

  async saveMenuPrice(tx: Tx, templateKey: string, priceNet: string | null): Promise<void> {
    if (priceNet === null) await tx.menuPrice.deleteMany({ where: { templateKey } });
    else await tx.menuPrice.upsert({ where: { templateKey }, create: { templateKey, priceNet }, update: { priceNet } });
  }
}
