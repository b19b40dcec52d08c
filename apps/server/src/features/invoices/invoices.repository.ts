import { Injectable } from '@nestjs/common';
import type { InvoiceDocument } from '#libs/invoicing';
import type { DbClient, Prisma, Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface InvoiceRow {
  id: string;
  number: string;
  kind: string;
  jobId: string | null;
  issuedOn: Date;
  issuedAt: Date;
  dueOn: Date;
  currency: string;
  taxInclusive: string;
  payable: string;
  customerId: string;
  document: InvoiceDocument;
  payments: { id: string; amount: string; method: string; reference: string; why: string; paidOn: Date }[];
  corrections: { id: string; number: string; issuedOn: Date; payable: string; taxInclusive: string }[];
  original: { id: string; number: string } | null;
}

export interface InvoiceListRow {
  id: string;
  number: string;
  kind: string;
  issuedOn: Date;
  dueOn: Date;
  currency: string;
  payable: string;
  /** Paid, or taken back by credit notes. */
  settled: string;
  customerName: string;
}

export interface NewInvoice {
  seriesKey: string;
  serial: number;
  number: string;
  kind: string;
  jobId: string | null;
  customerId: string;
  originalId?: string;
  issuedOn: Date;
  dueOn: Date;
  currency: string;
  taxExclusive: string;
  vatTotal: string;
  taxInclusive: string;
  payable: string;
  document: InvoiceDocument;
  issuedAt: Date;
  issuedById: string;
}

export interface InvoiceFileRow {
  mediaType: string;
  bytes: Uint8Array;
}

export interface ReadyJob {
  id: string;
  number: number;
  stage: string;
  customer: { name: string };
  vehicle: { registration: string; make: string; model: string };
}

const READY = ['run-hot', 'settling', 'settled', 'keys-out'];

@Injectable()
export class InvoicesRepository {
  constructor(private readonly prisma: PrismaService) {}

  async find(id: string, db: DbClient = this.prisma.db): Promise<InvoiceRow | undefined> {
    const row = await db.invoice.findUnique({
      where: { id },
      include: {
        payments: { orderBy: [{ takenAt: 'asc' }, { id: 'asc' }] },
        corrections: {
          where: { kind: 'credit-note' },
          select: { id: true, number: true, issuedOn: true, payable: true, taxInclusive: true },
          orderBy: { issuedAt: 'asc' },
        },
        original: { select: { id: true, number: true } },
      },
    });
    if (!row) return undefined;
    return {
      ...row,
      payable: row.payable.toFixed(2),
      taxInclusive: row.taxInclusive.toFixed(2),
      document: row.document as unknown as InvoiceDocument,
      payments: row.payments.map((payment) => ({ ...payment, amount: payment.amount.toFixed(2) })),
      corrections: row.corrections.map((correction) => ({
        ...correction,
        payable: correction.payable.toFixed(2),
        taxInclusive: correction.taxInclusive.toFixed(2),
      })),
    };
  }

  async latest(most: number): Promise<InvoiceListRow[]> {
    const rows = await this.prisma.db.invoice.findMany({
      orderBy: { issuedAt: 'desc' },
      take: most,
      select: {
        id: true,
        number: true,
        kind: true,
        issuedOn: true,
        dueOn: true,
        currency: true,
        payable: true,
        payments: { select: { amount: true } },
        corrections: { where: { kind: 'credit-note' }, select: { payable: true } },
        job: { select: { customer: { select: { name: true } } } },
      },
    });
    return rows.map(({ payments, corrections, job, payable, ...row }) => ({
      ...row,
      payable: payable.toFixed(2),
      settled: [...payments.map(({ amount }) => amount), ...corrections.map((correction) => correction.payable)]
        .reduce((sum, amount) => sum.plus(amount), payable.minus(payable))
        .toFixed(2),
      customerName: job?.customer.name ?? '',
    }));
  }

  /** Run hot or later, with no invoice that stands. */
  async readyJobs(most: number): Promise<ReadyJob[]> {
    const ids = await this.prisma.db.$queryRaw<{ id: string }[]>`
      select j.id from job j
      where j.stage = any(${READY}) and j.no_charge_why is null and not exists (
        select from invoice i where i.job_id = j.id and i.kind in ('invoice', 'simplified') and i.tax_inclusive <>
          (select coalesce(sum(c.tax_inclusive), 0) from invoice c where c.original_id = i.id and c.kind = 'credit-note'))
      order by j.number limit ${most}`;
    return this.prisma.db.job.findMany({
      where: { id: { in: ids.map(({ id }) => id) } },
      orderBy: { number: 'asc' },
      select: {
        id: true,
        number: true,
        stage: true,
        customer: { select: { name: true } },
        vehicle: { select: { registration: true, make: true, model: true } },
      },
    });
  }

  /** The number of the invoice that stands and has taken this deposit off. */
  async takerOfDeposit(tx: Tx, { jobId, number }: { jobId: string | null; number: string }): Promise<string | undefined> {
    if (jobId === null) return undefined;
    const [row] = await tx.$queryRaw<{ number: string }[]>`
      select i.number from invoice i
      where i.job_id = ${jobId}::uuid and i.kind in ('invoice', 'simplified')
        and i.document -> 'preceding' @> jsonb_build_array(jsonb_build_object('number', ${number}::text))
        and i.tax_inclusive <> (select coalesce(sum(c.tax_inclusive), 0) from invoice c where c.original_id = i.id and c.kind = 'credit-note')
      limit 1`;
    return row?.number;
  }

  /** Takes the next number of a series; its row stays locked until the transaction ends, so that none is lost or given twice. */
  async nextNumber(tx: Tx, key: string, prefix: string): Promise<{ serial: number; number: string }> {
    await tx.invoiceSeries.createMany({ data: [{ key, prefix }], skipDuplicates: true });
    const [row] = await tx.$queryRaw<{ serial: number; prefix: string }[]>`
      update invoice_series set next_number = next_number + 1 where key = ${key} returning next_number - 1 as serial, prefix`;
    if (!row) throw new Error(`The invoice series ${key} is gone`);
    return { serial: row.serial, number: `${row.prefix}${String(row.serial).padStart(4, '0')}` };
  }

  async issue(tx: Tx, { document, ...invoice }: NewInvoice): Promise<string> {
    const data = { ...invoice, document: document as unknown as Prisma.InputJsonObject };
    return (await tx.invoice.create({ data, select: { id: true } })).id;
  }

  /** Money on account becomes prepaid on this invoice, each entry once. */
  async takePrepaid(tx: Tx, invoiceId: string, paymentIds: readonly string[]): Promise<void> {
    await tx.invoicePrepayment.createMany({ data: paymentIds.map((paymentId) => ({ paymentId, invoiceId })) });
  }

  /** Credit notes on a document, in the order of their issue. */
  async creditNotesOf(originalId: string, db: DbClient = this.prisma.db): Promise<InvoiceDocument[]> {
    const rows = await db.invoice.findMany({
      where: { originalId, kind: 'credit-note' },
      orderBy: { issuedAt: 'asc' },
      select: { document: true },
    });
    return rows.map(({ document }) => document as unknown as InvoiceDocument);
  }

  /** The job before the series, everywhere, so that two never wait for each other. */
  async lockJobOf(tx: Tx, id: string): Promise<void> {
    await tx.$queryRaw`select 1 from job where id = (select job_id from invoice where id = ${id}::uuid) for update`;
  }

  async lock(tx: Tx, id: string): Promise<void> {
    // An issued invoice is never updated; its series' row orders the payments of one invoice well enough.
    await tx.$queryRaw`select 1 from invoice_series where key = (select series_key from invoice where id = ${id}::uuid) for update`;
  }

  async file(invoiceId: string, kind: string): Promise<InvoiceFileRow | undefined> {
    const row = await this.prisma.db.invoiceFile.findUnique({
      where: { invoiceId_kind: { invoiceId, kind } },
      select: { mediaType: true, bytes: true },
    });
    return row ?? undefined;
  }

  /** The first rendering stays; whoever comes second gets that one. */
  async keepFile(file: {
    invoiceId: string;
    kind: string;
    mediaType: string;
    bytes: Uint8Array<ArrayBuffer>;
    sha256: string;
    madeAt: Date;
  }): Promise<void> {
    await this.prisma.db.invoiceFile.createMany({ data: [file], skipDuplicates: true });
  }
}
