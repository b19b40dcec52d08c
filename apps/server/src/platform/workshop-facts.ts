import { Injectable } from '@nestjs/common';
import type { Database, DbClient } from '#libs/db';
import { PrismaService } from './database.ts';

/** What the workshop says of itself: its paper, its site, its rates. Money and rates are decimal text. */
export interface Workshop {
  name: string;
  addressLines: string[];
  postcode: string;
  city: string;
  country: string;
  phone: string;
  email: string;
  vatId: string;
  payTo: string;
  timeZone: string;
  currency: string;
  isDemo: boolean;
  isOnePerson: boolean;
  altitudeM: number;
  coldestAirC: number;
  hottestAirC: number;
  freezeMarginK: number;
  jugMl: number;
  jugMarkMl: number;
  labourRate: string;
  partsMarkupPct: string;
  wasteChargePerL: string;
  vatRatePct: string;
  payWithinDays: number;
  guaranteeWords: string;
  companyNumber: string;
  paper: 'a4' | 'letter';
  /** Which PDF of an invoice is made: with the structured invoice in it or without. */
  pdfForm: 'plain' | 'hybrid' | 'hybrid-for-business';
  vatCategory: 'S' | 'Z' | 'E' | 'O';
  exemptionWords: string;
  cashAccounting: boolean;
  simplifiedLimit: string | null;
  depositForm: 'tax-document' | 'prepaid';
  /** As the money library reads it; null: the plain mark-up. */
  partsRule: unknown;
  consumablesPct: string;
  consumablesMost: string | null;
  returnLeadDays: number;
  labelFromNet: string;
  fillToleranceMl: number;
  topUpToleranceMl: number;
  version: number;
}

type WorkshopRow = NonNullable<Awaited<ReturnType<Database['workshop']['findUnique']>>>;

export function toWorkshop(row: WorkshopRow): Workshop {
  return {
    ...row,
    coldestAirC: row.coldestAirC.toNumber(),
    hottestAirC: row.hottestAirC.toNumber(),
    freezeMarginK: row.freezeMarginK.toNumber(),
    labourRate: row.labourRate.toFixed(2),
    partsMarkupPct: row.partsMarkupPct.toString(),
    wasteChargePerL: row.wasteChargePerL.toFixed(2),
    vatRatePct: row.vatRatePct.toString(),
    paper: row.paper === 'letter' ? 'letter' : 'a4',
    pdfForm: row.pdfForm as Workshop['pdfForm'],
    vatCategory: row.vatCategory as Workshop['vatCategory'],
    simplifiedLimit: row.simplifiedLimit?.toFixed(2) ?? null,
    depositForm: row.depositForm as Workshop['depositForm'],
    consumablesPct: row.consumablesPct.toString(),
    consumablesMost: row.consumablesMost?.toFixed(2) ?? null,
    labelFromNet: row.labelFromNet.toFixed(2),
  };
}

/** Read fresh each time: several processes may serve one workshop. */
@Injectable()
export class WorkshopFacts {
  constructor(private readonly prisma: PrismaService) {}

  async find(db: DbClient = this.prisma.db): Promise<Workshop | undefined> {
    const row = await db.workshop.findUnique({ where: { id: 1 } });
    return row ? toWorkshop(row) : undefined;
  }

  /** Inside a transaction give its own client: another connection may not be had while this one is held. */
  async get(db?: DbClient): Promise<Workshop> {
    const workshop = await this.find(db);
    if (!workshop) throw new Error('The workshop is not set up yet');
    return workshop;
  }
}
