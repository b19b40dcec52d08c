import { Injectable } from '@nestjs/common';
import type { FitmentEvent, InstrumentKey, PartFamily } from '#libs/fitment';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

const DAY_MS = 24 * 3_600_000;

export interface BenchReading {
  id: string;
  feature: string;
  place: string;
  figure: number | null;
  words: string | null;
  couldNotRead: boolean;
  why: string;
  instrument: string;
  expandedU: number | null;
  readById: string;
  readAt: Date;
}

export type NewReading = Omit<BenchReading, 'id'> & { jobId: string };

export interface BenchCandidate {
  id: string;
  partNumber: string;
  supplier: string;
  priceNet: string;
  unopenedOnly: boolean;
  /** The piece that lies here for this job, if one does. */
  unit: { id: string; code: string; place: string } | undefined;
  values: Record<string, number | string>;
}

export interface BenchJob {
  id: string;
  number: number;
  keyTag: number | null;
  stage: string;
  engineCode: string;
  choice: { variantId: string } | undefined;
}

export interface OpenJob {
  id: string;
  number: number;
  keyTag: number | null;
  stage: string;
  car: string;
  units: number;
}

/** Better known last: what was measured on the piece beats its photo, and both beat the list. */
const PROVENANCE = ['listing', 'photo', 'measured'];
const ON_BENCH = ['expected', 'set-aside', 'fitted', 'to-return'];

const VARIANT = {
  include: {
    supplier: { select: { name: true, unopenedOnly: true } },
    statements: { where: { withdrawnAt: null }, orderBy: { saidAt: 'asc' } },
  },
} as const;

type VariantRow = Awaited<ReturnType<BenchRepository['listed']>>[number];

@Injectable()
export class BenchRepository {
  constructor(private readonly prisma: PrismaService) {}

  async job(id: string, db: DbClient = this.prisma.db): Promise<BenchJob | undefined> {
    const row = await db.job.findUnique({
      where: { id },
      select: {
        number: true,
        keyTag: true,
        stage: true,
        vehicle: { select: { engineCode: true } },
        choice: { select: { variantId: true } },
      },
    });
    if (!row) return undefined;
    const { vehicle, choice, ...rest } = row;
    return { id, ...rest, engineCode: vehicle.engineCode, choice: choice ?? undefined };
  }

  /** The newest version of a part family. */
  async family(key: string, db: DbClient = this.prisma.db): Promise<PartFamily | undefined> {
    const row = await db.partFamily.findFirst({ where: { key }, orderBy: { version: 'desc' } });
    return row ? (row.features as unknown as PartFamily) : undefined;
  }

  /** The variants whose pieces lie here for the job; none here yet: those that catalogues list for its engine. */
  async candidates(jobId: string, engineCode: string, db: DbClient = this.prisma.db): Promise<BenchCandidate[]> {
    const units = await db.partUnit.findMany({
      where: { jobId, place: { in: ON_BENCH } },
      orderBy: { code: 'asc' },
      include: { variant: VARIANT },
    });
    const byVariant = new Map(units.map((unit) => [unit.variantId, unit]));
    const variants = units.length > 0 ? [...byVariant.values()].map(({ variant }) => variant) : await this.listed(engineCode, db);
    return variants.map((variant) => candidateOf(variant, byVariant.get(variant.id)));
  }

  async readings(jobId: string, db: DbClient = this.prisma.db): Promise<BenchReading[]> {
    const rows = await db.fitmentReading.findMany({ where: { jobId, withdrawnAt: null }, orderBy: { readAt: 'asc' } });
    return rows.map((row) => ({ ...row, figure: row.figure?.toNumber() ?? null, expandedU: row.expandedU?.toNumber() ?? null }));
  }

  /** What fitted this engine here before, how it held, and what is listed for it. */
  async history({ engineCode, id }: BenchJob, now: Date, db: DbClient = this.prisma.db): Promise<FitmentEvent[]> {
    const choices = await db.fitmentChoice.findMany({
      where: { engineCode, jobId: { not: id } },
      select: { variantId: true, chosenAt: true, job: { select: { comebacks: { select: { comebackCause: true }, take: 1 } } } },
    });
    const listings = await db.catalogueListing.findMany({ where: { engineCode }, select: { variantId: true } });
    return [
      ...choices.map(({ variantId, chosenAt, job }): FitmentEvent => {
        const [comeback] = job.comebacks;
        const ageDays = Math.max(0, (now.getTime() - chosenAt.getTime()) / DAY_MS);
        const cause = (comeback?.comebackCause ?? 'other') as 'part' | 'work' | 'other';
        return { candidateId: variantId, kind: 'fitted', ageDays, ...(comeback ? { comeback: cause } : {}) };
      }),
      ...listings.map(({ variantId }): FitmentEvent => ({ candidateId: variantId, kind: 'listed', ageDays: 0 })),
    ];
  }

  /** What the shop can measure lengths with, in the families' words. */
  async instruments(db: DbClient = this.prisma.db): Promise<InstrumentKey[]> {
    const rows = await db.instrument.findMany({ where: { isActive: true }, select: { name: true } });
    const has = (word: string): boolean => rows.some(({ name }) => name.toLowerCase().includes(word));
    return [...(has('vernier') ? (['vernier'] as const) : []), ...(has('rule') ? (['steel-rule'] as const) : [])];
  }

  async addReading(tx: Tx, reading: NewReading): Promise<void> {
    await tx.fitmentReading.create({ data: reading });
  }

  async withdrawReading(tx: Tx, { id, jobId, at }: { id: string; jobId: string; at: Date }): Promise<boolean> {
    return (await tx.fitmentReading.updateMany({ where: { id, jobId, withdrawnAt: null }, data: { withdrawnAt: at } })).count > 0;
  }

  async choose(
    tx: Tx,
    choice: {
      jobId: string;
      variantId: string;
      engineCode: string;
      probability: number;
      evidence: object;
      chosenById: string;
      chosenAt: Date;
    },
  ): Promise<void> {
    const { jobId, ...rest } = choice;
    await tx.fitmentChoice.upsert({ where: { jobId }, create: choice, update: rest });
  }

  /** Jobs whose part is not settled yet, with how many pieces lie here for each. */
  async openJobs(): Promise<OpenJob[]> {
    const rows = await this.prisma.db.job.findMany({
      where: { stage: { in: ['expected', 'standing', 'opened'] }, choice: null, template: { key: 'thermostat' } },
      orderBy: [{ keyTag: 'asc' }, { number: 'asc' }],
      select: {
        id: true,
        number: true,
        keyTag: true,
        stage: true,
        vehicle: { select: { make: true, model: true, registration: true } },
        _count: { select: { units: true } },
      },
    });
    return rows.map(({ vehicle, _count, ...row }) => ({
      ...row,
      car: `${vehicle.make} ${vehicle.model}, ${vehicle.registration}`,
      units: _count.units,
    }));
  }

  async staffNames(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.prisma.db.staff.findMany({ select: { id: true, displayName: true } });
    return new Map(rows.map(({ id, displayName }) => [id, displayName]));
  }

  async listed(engineCode: string, db: DbClient) {
    if (engineCode === '') return [];
    return db.partVariant.findMany({ where: { listings: { some: { engineCode } } }, orderBy: { partNumber: 'asc' }, ...VARIANT });
  }
}

function candidateOf(variant: VariantRow, unit: BenchCandidate['unit']): BenchCandidate {
  const ranked = [...variant.statements].sort((a, b) => PROVENANCE.indexOf(a.provenance) - PROVENANCE.indexOf(b.provenance));
  return {
    id: variant.id,
    partNumber: variant.partNumber,
    supplier: variant.supplier.name,
    unopenedOnly: variant.supplier.unopenedOnly,
    priceNet: variant.priceNet.toFixed(2),
    unit: unit ? { id: unit.id, code: unit.code, place: unit.place } : undefined,
    values: Object.fromEntries(ranked.map(({ feature, figure, words }) => [feature, figure?.toNumber() ?? words ?? ''])),
  };
}
