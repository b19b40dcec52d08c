import { Injectable } from '@nestjs/common';
import { END_PLACES } from '#libs/unit-life';
import { PrismaService } from '../../platform/database.ts';

export interface JobMoney {
  jobId: string;
  jobNumber: number;
  car: string;
  invoiceNumber: string;
  issuedOn: Date;
  net: string;
  labour: string;
  partsSold: string;
  partsCost: string;
  open: string;
}

export interface SupplierExposure {
  supplier: string;
  units: number;
  open: string;
  soonest: Date | null;
}

export interface PassedWithout {
  jobId: string;
  jobNumber: number;
  step: string;
  value: unknown;
  by: string;
  at: Date;
}

export interface OpenDebt {
  id: string;
  jobId: string;
  jobNumber: number;
  car: string;
  kind: string;
  dueOn: Date | null;
}

interface MoneyRow {
  job_id: string;
  job_number: number;
  car: string;
  invoice_number: string;
  issued_on: Date;
  net: string;
  labour: string;
  parts_sold: string;
  parts_cost: string;
  open: string;
}

/** Reads for the owner's pages; each figure is summed by the database from what was issued, charged and paid. */
@Injectable()
export class RecordsRepository {
  constructor(private readonly prisma: PrismaService) {}

  async jobMoney(most: number): Promise<JobMoney[]> {
    const rows = await this.prisma.db.$queryRaw<MoneyRow[]>`
      select j.id as job_id, j.number as job_number, v.make || ' ' || v.model || ', ' || v.registration as car,
        i.number as invoice_number, i.issued_on, i.tax_exclusive::text as net,
        (select coalesce(sum((l ->> 'net')::numeric), 0)::text from jsonb_array_elements(i.document -> 'lines') l where l ->> 'kind' = 'labour') as labour,
        (select coalesce(sum((l ->> 'net')::numeric), 0)::text from jsonb_array_elements(i.document -> 'lines') l where l ->> 'kind' = 'part') as parts_sold,
        (select coalesce(sum(case m.kind when 'charged' then m.amount_net else -m.amount_net end), 0)::text
          from part_unit u join unit_money m on m.unit_id = u.id where u.job_id = j.id and u.place = 'fitted' and m.kind in ('charged', 'credited')) as parts_cost,
        (i.payable - coalesce((select sum(p.amount) from payment p where p.invoice_id = i.id), 0)
          - coalesce((select sum(c.payable) from invoice c where c.original_id = i.id), 0))::text as open
      from invoice i join job j on j.id = i.job_id join vehicle v on v.id = j.vehicle_id
      where i.kind = 'invoice' order by i.issued_at desc limit ${most}`;
    return rows.map((row) => ({
      jobId: row.job_id,
      jobNumber: row.job_number,
      car: row.car,
      invoiceNumber: row.invoice_number,
      issuedOn: row.issued_on,
      net: row.net,
      labour: row.labour,
      partsSold: row.parts_sold,
      partsCost: row.parts_cost,
      open: row.open,
    }));
  }

  /** What lies at suppliers or on our shelf waiting to go back to them, and what came late for a piece that had its end. */
  async exposure(): Promise<SupplierExposure[]> {
    return this.prisma.db.$queryRaw<SupplierExposure[]>`
      select s.name as supplier, count(u.id)::int as units, min(u.return_by) filter (where u.place in ('set-aside', 'to-return')) as soonest,
        coalesce(sum(m.open), 0)::text as open
      from part_unit u join part_variant v on v.id = u.variant_id join supplier s on s.id = v.supplier_id
        cross join lateral (select coalesce(sum(case kind when 'charged' then amount_net else -amount_net end), 0) as open
          from unit_money where unit_id = u.id) m
      where u.place in ('set-aside', 'to-return', 'handed-over') or (u.place = any(${[...END_PLACES]}) and m.open <> 0)
      group by s.name order by s.name`;
  }

  async passedWithout(since: Date): Promise<PassedWithout[]> {
    const rows = await this.prisma.db.jobAction.findMany({
      where: { kind: 'pass-without', receivedAt: { gte: since }, difference: null },
      orderBy: { seq: 'desc' },
      take: 50,
      select: { step: true, value: true, byId: true, readAt: true, job: { select: { id: true, number: true } } },
    });
    const names = new Map(
      (await this.prisma.db.staff.findMany({ select: { id: true, displayName: true } })).map(({ id, displayName }) => [id, displayName]),
    );
    return rows.map(({ step, value, byId, readAt, job }) => ({
      jobId: job.id,
      jobNumber: job.number,
      step: step ?? '',
      value,
      by: names.get(byId) ?? '',
      at: readAt,
    }));
  }

  async openDebts(most: number): Promise<OpenDebt[]> {
    const rows = await this.prisma.db.jobDebt.findMany({
      where: { endedAt: null },
      orderBy: [{ dueOn: { sort: 'asc', nulls: 'last' } }, { openedAt: 'asc' }],
      take: most,
      select: {
        id: true,
        kind: true,
        dueOn: true,
        job: { select: { id: true, number: true, vehicle: { select: { make: true, model: true, registration: true } } } },
      },
    });
    return rows.map(({ id, kind, dueOn, job }) => ({
      id,
      kind,
      dueOn,
      jobId: job.id,
      jobNumber: job.number,
      car: `${job.vehicle.make} ${job.vehicle.model}, ${job.vehicle.registration}`,
    }));
  }

  async customersOwe(): Promise<string> {
    const [row] = await this.prisma.db.$queryRaw<{ open: string }[]>`
      select (coalesce((select sum(case kind when 'credit-note' then -payable else payable end) from invoice), 0)
        - coalesce((select sum(amount) from payment), 0))::text as open`;
    return row?.open ?? '0';
  }

  async drumL(): Promise<string> {
    const [row] = await this.prisma.db.$queryRaw<{ litres: string }[]>`
      select coalesce(sum(case direction when 'collected' then -volume_l else volume_l end), 0)::text as litres from waste_entry`;
    return row?.litres ?? '0';
  }
}
