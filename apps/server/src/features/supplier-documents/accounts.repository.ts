import { Injectable } from '@nestjs/common';
import { type DbClient, Prisma } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';
import { unitCodeText } from '../returns/units.service.ts';

/** A unit as a paper may speak of it; money as decimal text, days as YYYY-MM-DD. */
export interface UnitAccount {
  id: string;
  label: string;
  partNumber: string;
  orderNumber: number | null;
  orderedAt: string | null;
  charged: string;
  back: string;
  restockingPct: string;
  daysToCredit: number;
  handedOverOn: string | null;
  noteNumbers: number[];
  invoiceNumbers: string[];
}

/** A return note with what its units still owe us. */
export interface OpenNote {
  id: string;
  number: number;
  evidence: string;
  handedOverOn: string;
  /** By the terms, net. */
  due: string;
}

export interface PaperRow {
  id: string;
  kind: 'invoice' | 'credit-note';
  number: string;
  datedOn: string;
  total: string;
  gross: string | null;
  /** A statement has named it. */
  isNamed: boolean;
}

const MOST_UNITS = 20_000;

/** What our books say at the moment a paper is laid beside them. */
@Injectable()
export class AccountsRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** Units of this supplier that a credit may be for: recent ones, settled or not, and all with money open. */
  creditable(supplierId: string, since: Date, db: DbClient = this.prisma.db): Promise<UnitAccount[]> {
    return this.units(
      db,
      Prisma.sql`v.supplier_id = ${supplierId}::uuid and u.place not in ('expected', 'fitted', 'sold', 'stocked')
      and (u.open_net <> 0 or u.created_at >= ${since})`,
    );
  }

  /** Units of this supplier that an invoice may charge. */
  chargeable(supplierId: string, since: Date, db: DbClient = this.prisma.db): Promise<UnitAccount[]> {
    return this.units(db, Prisma.sql`v.supplier_id = ${supplierId}::uuid and u.created_at >= ${since} and u.arrival_reason <> 'taken-out'`);
  }

  byIds(ids: readonly string[], db: DbClient = this.prisma.db): Promise<UnitAccount[]> {
    return ids.length === 0 ? Promise.resolve([]) : this.units(db, Prisma.sql`u.id = any(${[...ids]}::uuid[])`);
  }

  private async units(db: DbClient, where: Prisma.Sql): Promise<UnitAccount[]> {
    const rows = await db.$queryRaw<(Omit<UnitAccount, 'label'> & { code: string })[]>`
      select u.id, u.code, v.part_number as "partNumber", o.number as "orderNumber", l.price_net::text as "orderedAt",
        coalesce(m.charged, 0)::text as charged, coalesce(m.back, 0)::text as back,
        s.restocking_pct::text as "restockingPct", s.days_to_credit as "daysToCredit",
        to_char(h.at, 'YYYY-MM-DD') as "handedOverOn",
        array(select n.number from return_note_unit r join return_note n on n.id = r.note_id where r.unit_id = u.id) as "noteNumbers",
        array(select d.number from line_match x join supplier_line sl on sl.id = x.line_id join supplier_document d on d.id = sl.document_id
          where x.unit_id = u.id and x.side = 'charge' and x.state = 'laid') as "invoiceNumbers"
      from part_unit u
      join part_variant v on v.id = u.variant_id
      join supplier s on s.id = v.supplier_id
      left join order_line l on l.id = u.order_line_id
      left join purchase_order o on o.id = l.order_id
      left join lateral (select sum(amount_net) filter (where kind = 'charged') as charged,
        sum(amount_net) filter (where kind <> 'charged') as back from unit_money where unit_id = u.id) m on true
      left join lateral (select max(at) as at from unit_move where unit_id = u.id and "to" = 'handed-over') h on true
      where ${where}
      order by u.created_at desc, u.id desc limit ${MOST_UNITS}`;
    return rows.map(({ code, ...row }) => ({ ...row, label: unitCodeText(code) }));
  }

  /** Return notes of this supplier that left by that day, with what is due for those of their units that no credit note speaks of. */
  async openNotes(supplierId: string, by: Date, db: DbClient = this.prisma.db): Promise<OpenNote[]> {
    return db.$queryRaw<OpenNote[]>`
      select n.id, n.number, n.evidence, to_char(n.handed_over_at, 'YYYY-MM-DD') as "handedOverOn",
        round(sum(u.open_net * (100 - s.restocking_pct) / 100), 2)::text as due
      from return_note n join supplier s on s.id = n.supplier_id
      join return_note_unit r on r.note_id = n.id join part_unit u on u.id = r.unit_id
      where n.supplier_id = ${supplierId}::uuid and n.handed_over_at < ${by} and u.place = 'handed-over' and u.open_net > 0
        and not exists (select 1 from line_match m where m.unit_id = u.id and m.side = 'credit' and m.state = 'laid')
        and n.number = (select max(x.number) from return_note_unit y join return_note x on x.id = y.note_id where y.unit_id = u.id)
      group by n.id, s.restocking_pct order by n.number`;
  }

  async papers(supplierId: string, since: Date, db: DbClient = this.prisma.db): Promise<PaperRow[]> {
    return db.$queryRaw<PaperRow[]>`
      select d.id, d.kind, d.number, to_char(d.dated_on, 'YYYY-MM-DD') as "datedOn", d.total::text as total, d.gross::text as gross,
        exists (select 1 from line_match m where m.names_id = d.id and m.state = 'laid') as "isNamed"
      from supplier_document d
      where d.supplier_id = ${supplierId}::uuid and d.kind <> 'statement' and d.withdrawn_at is null and d.dated_on >= ${since}
      order by d.dated_on, d.number`;
  }
}
