import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { PrismaService } from '../../../platform/database.ts';

export interface NewPayment {
  invoiceId?: string;
  /** On account of a job that has no invoice yet. */
  jobId?: string;
  amount: string;
  method: string;
  reference: string;
  why: string;
  paidOn: Date;
  takenById: string;
  takenAt: Date;
}

export interface PaymentRow {
  id: string;
  amount: string;
  method: string;
  reference: string;
  why: string;
  paidOn: Date;
  takenBy: string;
  customerName: string;
  /** What it belongs to: an invoice's number or a job's. */
  invoice: { id: string; number: string; currency: string } | null;
  job: { id: string; number: number } | null;
}

@Injectable()
export class PaymentsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async add(tx: Tx, payment: NewPayment): Promise<string> {
    return (await tx.payment.create({ data: payment, select: { id: true } })).id;
  }

  async find(id: string): Promise<PaymentRow | undefined> {
    const row = await this.prisma.db.payment.findUnique({
      where: { id },
      include: {
        invoice: { select: { id: true, number: true, currency: true, customerId: true } },
        job: { select: { id: true, number: true, customer: { select: { name: true } } } },
      },
    });
    if (!row) return undefined;
    const [staff, customer] = await Promise.all([
      this.prisma.db.staff.findUnique({ where: { id: row.takenById }, select: { displayName: true } }),
      row.invoice ? this.prisma.db.customer.findUnique({ where: { id: row.invoice.customerId }, select: { name: true } }) : null,
    ]);
    return {
      ...row,
      amount: row.amount.toFixed(2),
      takenBy: staff?.displayName ?? '',
      customerName: customer?.name ?? row.job?.customer.name ?? '',
      invoice: row.invoice && { id: row.invoice.id, number: row.invoice.number, currency: row.invoice.currency },
      job: row.job && { id: row.job.id, number: row.job.number },
    };
  }
}
