import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface LineEdit {
  id: string;
  origin: string;
  kind: string;
  description: string;
  quantity: string;
  unit: string;
  unitPrice: string;
  vatCategory: string;
  vatRatePct: string;
  changedWhy: string | null;
  isRemoved: boolean;
}

export interface BillFacts {
  job: {
    id: string;
    number: number;
    stage: string;
    odometerKm: number | null;
    keysOutAt: Date | null;
    complaint: string;
    noChargeWhy: string | null;
  };
  templateName: string;
  customer: {
    id: string;
    name: string;
    addressLines: string[];
    postcode: string;
    city: string;
    country: string;
    vatId: string;
    email: string;
    phone: string;
  };
  vehicle: { registration: string; vin: string | null; makeAndModel: string };
  packages: { id: string; name: string; gross: string; saidBy: string; saidAt: string; how: string }[];
  ceilingGross: string | null;
  fittedUnits: { id: string; name: string; partNumber: string; costNet: string }[];
  coolant: { id: string; name: string; pricePerL: string } | null;
  edits: LineEdit[];
  openDebts: { kind: string; dueOn: Date | null }[];
  invoices: { id: string; number: string; kind: string }[];
}

const CUSTOMER = {
  id: true,
  name: true,
  addressLines: true,
  postcode: true,
  city: true,
  country: true,
  vatId: true,
  email: true,
  phone: true,
} as const;

@Injectable()
export class JobBillRepository {
  constructor(private readonly prisma: PrismaService) {}

  async lockJob(tx: Tx, jobId: string): Promise<boolean> {
    return (await tx.$queryRaw<unknown[]>`select 1 from job where id = ${jobId}::uuid for update`).length > 0;
  }

  async facts(jobId: string, db: DbClient = this.prisma.db): Promise<BillFacts | undefined> {
    const row = await db.job.findUnique({
      where: { id: jobId },
      include: {
        template: { select: { name: true } },
        customer: { select: CUSTOMER },
        vehicle: { select: { registration: true, vin: true, make: true, model: true } },
        authorisations: { where: { withdrawnAt: null }, orderBy: { saidAt: 'asc' }, include: { packages: { include: { package: true } } } },
        units: {
          where: { place: 'fitted' },
          include: { variant: { select: { name: true, partNumber: true, priceNet: true } }, orderLine: { select: { priceNet: true } } },
        },
        lines: { orderBy: { position: 'asc' } },
        debts: { where: { endedAt: null }, select: { kind: true, dueOn: true } },
        invoices: { orderBy: { issuedAt: 'asc' }, select: { id: true, number: true, kind: true } },
      },
    });
    if (!row) return undefined;
    const coolant = await db.coolantProduct.findFirst({ where: { isActive: true }, orderBy: { name: 'asc' } });
    const ceilings = row.authorisations.map(({ ceilingGross }) => ceilingGross);
    const [first, ...others] = ceilings;
    return {
      job: row,
      templateName: row.template.name,
      customer: row.customer,
      vehicle: { registration: row.vehicle.registration, vin: row.vehicle.vin, makeAndModel: `${row.vehicle.make} ${row.vehicle.model}` },
      packages: row.authorisations.flatMap((yes) =>
        yes.packages.map(({ package: { id, name, grossHigh } }) => ({
          id,
          name,
          gross: grossHigh.toFixed(2),
          saidBy: yes.saidBy,
          saidAt: yes.saidAt.toISOString(),
          how: yes.how,
        })),
      ),
      // Each yes names the most for what it covers: together they may cost the sum.
      ceilingGross: first === undefined ? null : others.reduce((sum, ceiling) => sum.plus(ceiling), first).toFixed(2),
      fittedUnits: row.units.map((unit) => ({
        id: unit.id,
        name: unit.variant.name,
        partNumber: unit.variant.partNumber,
        costNet: (unit.orderLine?.priceNet ?? unit.variant.priceNet).toFixed(2),
      })),
      coolant: coolant ? { id: coolant.id, name: coolant.name, pricePerL: coolant.pricePerL.toFixed(2) } : null,
      edits: row.lines.map((line) => ({
        id: line.id,
        origin: line.origin,
        kind: line.kind,
        description: line.description,
        quantity: line.quantity.toString(),
        unit: line.unit,
        unitPrice: line.unitPrice.toString(),
        vatCategory: line.vatCategory,
        vatRatePct: line.vatRatePct.toString(),
        changedWhy: line.changedWhy,
        isRemoved: line.removedAt !== null,
      })),
      openDebts: row.debts,
      invoices: row.invoices,
    };
  }

  /** One row per line of the draft that the desk changed, added or took out. */
  async saveEdit(tx: Tx, jobId: string, edit: Omit<LineEdit, 'id'> & { at: Date }): Promise<void> {
    const { isRemoved, at, origin, ...fields } = edit;
    const removedAt = isRemoved ? at : null;
    const position = await tx.jobLine.count({ where: { jobId } });
    await tx.jobLine.upsert({
      where: { jobId_origin: { jobId, origin } },
      create: { jobId, origin, position, removedAt, ...fields },
      update: { removedAt, ...fields },
    });
  }
}
