import { Injectable } from '@nestjs/common';
import { productFor } from '#libs/coolant';
import type { DbClient, Prisma, Tx } from '#libs/db';
import type { InvoiceDocument } from '#libs/invoicing';
import { PrismaService } from '../../platform/database.ts';
import { CoolantShelf } from '../coolant-shelf/coolant-shelf.service.ts';

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
  discount: string | null;
  discountFor: string;
  changedWhy: string | null;
  isRemoved: boolean;
}

/** Taken off or put on the whole draft. */
export interface Adjustment {
  id: string;
  kind: 'allowance' | 'charge';
  amount: string;
  reason: string;
  vatCategory: string;
  vatRatePct: string;
}

/** A deposit's tax document and what credit notes took back of it. */
export interface DepositFacts {
  id: string;
  number: string;
  document: InvoiceDocument;
  creditNotes: InvoiceDocument[];
}

/** Money on account that no invoice has taken yet; negative where it went back. */
export interface MoneyOnAccount {
  id: string;
  amount: string;
  method: string;
  reference: string;
  paidOn: Date;
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
  /** Labour at one price, whatever the hours. */
  menuPrice: string | null;
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
  coolant: CoolantFacts | null;
  edits: LineEdit[];
  adjustments: Adjustment[];
  paper: { advice: string; orderReference: string; buyerReference: string };
  openDebts: { kind: string; dueOn: Date | null }[];
  /** The invoice that stands: not credited in full. */
  standing: { id: string; number: string } | null;
  deposits: DepositFacts[];
  onAccount: MoneyOnAccount[];
}

/** The product that the card had poured, by the shelf's rule. */
interface CoolantFacts {
  id: string;
  name: string;
  pricePerL: string;
  serviceYears: number | null;
  serviceKm: number | null;
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
  constructor(
    private readonly prisma: PrismaService,
    private readonly shelf: CoolantShelf,
  ) {}

  async lockJob(tx: Tx, jobId: string): Promise<boolean> {
    return (await tx.$queryRaw<unknown[]>`select 1 from job where id = ${jobId}::uuid for update`).length > 0;
  }

  async facts(jobId: string, db: DbClient = this.prisma.db): Promise<BillFacts | undefined> {
    const row = await db.job.findUnique({
      where: { id: jobId },
      include: {
        template: { select: { key: true, name: true } },
        customer: { select: CUSTOMER },
        vehicle: {
          select: {
            registration: true,
            vin: true,
            make: true,
            model: true,
            facts: {
              where: { key: 'technology', withdrawnAt: null },
              orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
              take: 1,
              select: { words: true },
            },
          },
        },
        authorisations: { where: { withdrawnAt: null }, orderBy: { saidAt: 'asc' }, include: { packages: { include: { package: true } } } },
        units: {
          where: { place: 'fitted' },
          include: { variant: { select: { name: true, partNumber: true, priceNet: true } }, orderLine: { select: { priceNet: true } } },
        },
        lines: { orderBy: { position: 'asc' } },
        debts: { where: { endedAt: null }, select: { kind: true, dueOn: true } },
        adjustments: { where: { removedAt: null }, orderBy: [{ at: 'asc' }, { id: 'asc' }] },
        paper: true,
        invoices: {
          where: { kind: { not: 'credit-note' } },
          orderBy: { issuedAt: 'asc' },
          select: {
            id: true,
            number: true,
            kind: true,
            document: true,
            taxExclusive: true,
            taxInclusive: true,
            corrections: { select: { document: true, taxExclusive: true, taxInclusive: true } },
          },
        },
        onAccount: { where: { prepayment: null }, orderBy: [{ takenAt: 'asc' }, { id: 'asc' }] },
      },
    });
    if (!row) return undefined;
    const coolant = productFor(await this.shelf.onTheShelf(db), row.vehicle.facts[0]?.words);
    const menuPrice = await db.menuPrice.findUnique({ where: { templateKey: row.template.key } });
    const standing = row.invoices.find((invoice) => invoice.kind !== 'deposit' && !isCredited(invoice));
    const ceilings = row.authorisations.map(({ ceilingGross }) => ceilingGross);
    const [first, ...others] = ceilings;
    return {
      job: row,
      templateName: row.template.name,
      menuPrice: menuPrice?.priceNet.toFixed(2) ?? null,
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
      coolant,
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
        discount: line.discount?.toFixed(2) ?? null,
        discountFor: line.discountFor,
        changedWhy: line.changedWhy,
        isRemoved: line.removedAt !== null,
      })),
      adjustments: row.adjustments.map((adjustment) => ({
        id: adjustment.id,
        kind: adjustment.kind === 'charge' ? 'charge' : 'allowance',
        amount: adjustment.amount.toFixed(2),
        reason: adjustment.reason,
        vatCategory: adjustment.vatCategory,
        vatRatePct: adjustment.vatRatePct.toString(),
      })),
      paper: row.paper ?? { advice: '', orderReference: '', buyerReference: '' },
      openDebts: row.debts,
      standing: standing ? { id: standing.id, number: standing.number } : null,
      deposits: row.invoices
        .filter(({ kind }) => kind === 'deposit')
        .map(({ id, number, document, corrections }) => ({
          id,
          number,
          document: document as unknown as InvoiceDocument,
          creditNotes: corrections.map((note) => note.document as unknown as InvoiceDocument),
        })),
      onAccount: row.onAccount.map(({ id, amount, method, reference, paidOn }) => ({
        id,
        amount: amount.toFixed(2),
        method,
        reference,
        paidOn,
      })),
    };
  }
}

interface Credited {
  taxExclusive: Prisma.Decimal;
  taxInclusive: Prisma.Decimal;
}

/** Whether credit notes took all of it back. */
function isCredited(invoice: Credited & { corrections: readonly Credited[] }): boolean {
  const left = (part: keyof Credited): Prisma.Decimal => invoice.corrections.reduce((sum, note) => sum.minus(note[part]), invoice[part]);
  return left('taxExclusive').isZero() && left('taxInclusive').isZero();
}
