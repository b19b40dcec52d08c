import { Injectable } from '@nestjs/common';
import type { DbClient, Tx } from '#libs/db';
import type { InvoiceDocument } from '#libs/invoicing';
import { PrismaService } from '../../../platform/database.ts';

export interface OverdueRow {
  id: string;
  number: string;
  jobId: string | null;
  customerId: string;
  customerName: string;
  phone: string;
  dueOn: Date;
  currency: string;
  open: string;
}

export interface TakenMoney {
  id: string;
  method: string;
  amount: string;
  paidOn: Date;
  /** The invoice's number, or the job's where it is on account. */
  of: string;
}

export interface CashUpRow {
  id: string;
  number: number;
  at: Date;
  by: string;
  floatBefore: string;
  banked: string;
  floatAfter: string;
  lines: { method: string; expected: string; counted: string; why: string }[];
}

export interface NewCashUp {
  at: Date;
  byId: string;
  floatBefore: string;
  banked: string;
  floatAfter: string;
  lines: { method: string; expected: string; counted: string; why: string }[];
  paymentIds: readonly string[];
}

export interface JournalDocument {
  number: string;
  kind: string;
  issuedOn: Date;
  customerNumber: number | null;
  customerName: string;
  jobNumber: number | null;
  originalNumber: string | null;
  document: InvoiceDocument;
}

export interface JournalPayment {
  paidOn: Date;
  amount: string;
  method: string;
  reference: string;
  why: string;
  number: string;
  jobNumber: number | null;
  customerName: string;
  currency: string;
}

/** The till's books: what is overdue, what was taken since the last cash-up, what the book-keeper gets. */
@Injectable()
export class BooksRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** Documents whose day has passed with money open, the oldest first. */
  async overdue(today: string, most: number): Promise<OverdueRow[]> {
    return this.prisma.db.$queryRaw<OverdueRow[]>`
      select i.id, i.number, i.job_id as "jobId", i.customer_id as "customerId", c.name as "customerName", c.phone, i.due_on as "dueOn",
        i.currency, (i.payable - m.credited - m.paid)::text as open
      from invoice i join customer c on c.id = i.customer_id
        cross join lateral (select
          coalesce((select sum(payable) from invoice where original_id = i.id and kind = 'credit-note'), 0) as credited,
          coalesce((select sum(amount) from payment where invoice_id = i.id), 0) as paid) m
      where i.kind <> 'credit-note' and i.due_on < ${today}::date and i.payable - m.credited - m.paid > 0
      order by i.due_on, i.number limit ${most}`;
  }

  /** Money that no cash-up has counted yet, in the order in which it came. */
  async uncounted(db: DbClient = this.prisma.db): Promise<TakenMoney[]> {
    const rows = await db.payment.findMany({
      where: { cashUp: null },
      orderBy: [{ takenAt: 'asc' }, { id: 'asc' }],
      select: {
        id: true,
        method: true,
        amount: true,
        paidOn: true,
        invoice: { select: { number: true } },
        job: { select: { number: true } },
      },
    });
    return rows.map(({ invoice, job, amount, ...row }) => ({
      ...row,
      amount: amount.toFixed(2),
      of: invoice?.number ?? `job ${job?.number ?? ''}`,
    }));
  }

  async lastFloat(db: DbClient = this.prisma.db): Promise<string> {
    const last = await db.cashUp.findFirst({ orderBy: { number: 'desc' }, select: { floatAfter: true } });
    return last?.floatAfter.toFixed(2) ?? '0.00';
  }

  /** One cash-up at a time: the second sees what the first has counted. */
  async lockCashUps(tx: Tx): Promise<void> {
    await tx.$executeRaw`lock table cash_up in share row exclusive mode`;
  }

  async addCashUp(tx: Tx, { lines, paymentIds, ...cashUp }: NewCashUp): Promise<string> {
    const { id } = await tx.cashUp.create({ data: { ...cashUp, lines: { createMany: { data: lines } } }, select: { id: true } });
    await tx.cashUpPayment.createMany({ data: paymentIds.map((paymentId) => ({ paymentId, cashUpId: id })) });
    return id;
  }

  async cashUps(most: number): Promise<CashUpRow[]> {
    const rows = await this.prisma.db.cashUp.findMany({ orderBy: { number: 'desc' }, take: most, include: { lines: true } });
    const staff = await this.prisma.db.staff.findMany({ where: { id: { in: rows.map(({ byId }) => byId) } } });
    return rows.map(({ lines, byId, ...row }) => ({
      ...row,
      by: staff.find(({ id }) => id === byId)?.displayName ?? '',
      floatBefore: row.floatBefore.toFixed(2),
      banked: row.banked.toFixed(2),
      floatAfter: row.floatAfter.toFixed(2),
      lines: lines.map(({ method, expected, counted, why }) => ({
        method,
        expected: expected.toFixed(2),
        counted: counted.toFixed(2),
        why,
      })),
    }));
  }

  async documentsBetween(from: Date, to: Date): Promise<JournalDocument[]> {
    const rows = await this.prisma.db.invoice.findMany({
      where: { issuedOn: { gte: from, lte: to } },
      orderBy: [{ issuedOn: 'asc' }, { issuedAt: 'asc' }, { number: 'asc' }],
      select: {
        number: true,
        kind: true,
        issuedOn: true,
        customerId: true,
        document: true,
        job: { select: { number: true } },
        original: { select: { number: true } },
      },
    });
    const customers = await this.prisma.db.customer.findMany({
      where: { id: { in: [...new Set(rows.map(({ customerId }) => customerId))] } },
      select: { id: true, number: true, name: true },
    });
    const byId = new Map(customers.map((customer) => [customer.id, customer]));
    return rows.map(({ customerId, job, original, document, ...row }) => ({
      ...row,
      customerNumber: byId.get(customerId)?.number ?? null,
      customerName: byId.get(customerId)?.name ?? '',
      jobNumber: job?.number ?? null,
      originalNumber: original?.number ?? null,
      document: document as unknown as InvoiceDocument,
    }));
  }

  async paymentsBetween(from: Date, to: Date, currency: string): Promise<JournalPayment[]> {
    const rows = await this.prisma.db.payment.findMany({
      where: { paidOn: { gte: from, lte: to } },
      orderBy: [{ paidOn: 'asc' }, { takenAt: 'asc' }, { id: 'asc' }],
      include: {
        invoice: { select: { number: true, currency: true, job: { select: { number: true, customer: { select: { name: true } } } } } },
        job: { select: { number: true, customer: { select: { name: true } } } },
      },
    });
    return rows.map(({ invoice, job, amount, paidOn, method, reference, why }) => {
      const of = invoice?.job ?? job;
      return {
        paidOn,
        amount: amount.toFixed(2),
        method,
        reference,
        why,
        number: invoice?.number ?? '',
        jobNumber: of?.number ?? null,
        customerName: of?.customer.name ?? '',
        currency: invoice?.currency ?? currency,
      };
    });
  }
}
