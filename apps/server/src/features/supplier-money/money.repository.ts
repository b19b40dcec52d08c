import { Injectable } from '@nestjs/common';
import { AGE_BANDS, type AgeBand } from '#libs/unit-life';
import { Prisma } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface MonthRow {
  /** YYYY-MM. */
  month: string;
  recovered: string;
  lost: string;
}

/** What was given up for a family, or for what a catalogue listed. */
export interface CostRow {
  name: string;
  detail: string;
  href: string | null;
  pieces: number;
  lost: string;
}

export interface UnitRow {
  id: string;
  code: string;
  supplier: string;
  partNumber: string;
  name: string;
  place: string;
  open: string;
  /** YYYY-MM-DD. */
  handedOverOn: string | null;
  returnBy: string | null;
}

export interface UnitsWanted {
  supplierId?: string | undefined;
  age?: AgeBand | undefined;
  /** Its place in words of the shelf. */
  what: 'at-supplier' | 'late' | 'soon' | 'owed';
  most: number;
}

const SOON_DAYS = 7;

/** Away from us with money open: at its supplier, or at an end that later money opened again. */
const AWAY = Prisma.sql`u.place in ('handed-over', 'gone-for-good', 'called-off', 'never-came', 'written-off')`;

/** Days since hand-over as the age bands of the unit-life library count them. */
const BAND = Prisma.sql`case ${Prisma.join(
  AGE_BANDS.filter(({ lastDay }) => Number.isFinite(lastDay)).map(
    ({ key, lastDay }) => Prisma.sql`when x.days <= ${Prisma.raw(String(lastDay))} then ${Prisma.raw(`'${key}'`)}`,
  ),
  ' ',
)} else ${Prisma.raw(`'${AGE_BANDS.at(-1)?.key ?? ''}'`)} end`;

/** Sums over all units, made by the database from indexes: none of them is carried here. */
@Injectable()
export class MoneyRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** Came back and was given up in each month from then on, as the calendar of the workshop's place has it. */
  async months(from: Date, timeZone: string): Promise<MonthRow[]> {
    return this.prisma.db.$queryRaw<MonthRow[]>`
      select to_char(month, 'YYYY-MM') as month, recovered::text, lost::text from (
        select date_trunc('month', at at time zone ${timeZone}) as month,
          coalesce(sum(amount_net) filter (where kind in ('credited', 'carrier-paid')), 0) as recovered,
          coalesce(sum(amount_net) filter (where kind = 'loss-accepted'), 0) as lost
        from unit_money where kind <> 'charged' and at >= ${from}
        group by 1) x
      order by 1`;
  }

  /**
   * What was given up since then: by family, and by the catalogue's listing for the car's engine that had us order the piece. Each
   * is ten rows at most.
   */
  async costs(from: Date): Promise<{ families: CostRow[]; listings: CostRow[] }> {
    const rows = await this.prisma.db.$queryRaw<(CostRow & { of: 'family' | 'listing' })[]>`
      with cost as materialized (
        select u.variant_id, u.job_id, count(distinct u.id) as pieces, sum(m.amount_net) as lost
        from unit_money m join part_unit u on u.id = m.unit_id
        where m.kind = 'loss-accepted' and m.at >= ${from}
        group by u.variant_id, u.job_id)
      (select 'family' as of, f.name, '' as detail, null::uuid as href, sum(x.pieces)::int as pieces, sum(x.lost)::text as lost
        from cost x join part_variant v on v.id = x.variant_id join part_family f on f.id = v.family_id
        group by f.key, f.name having sum(x.lost) > 0 order by sum(x.lost) desc limit 10)
      union all
      (select 'listing', v.part_number || ' for ' || l.engine_code, l.catalogue, v.id, sum(x.pieces)::int, sum(x.lost)::text
        from cost x join part_variant v on v.id = x.variant_id
        join job j on j.id = x.job_id join vehicle c on c.id = j.vehicle_id
        join catalogue_listing l on l.variant_id = v.id and l.engine_code = c.engine_code
        group by v.id, l.engine_code, l.catalogue having sum(x.lost) > 0 order by sum(x.lost) desc limit 10)`;
    const most = (of: string): CostRow[] => rows.filter((row) => row.of === of).sort((a, b) => Number(b.lost) - Number(a.lost));
    return { families: most('family'), listings: most('listing') };
  }

  async units({ supplierId, age, what, most }: UnitsWanted, today: string, timeZone: string): Promise<UnitRow[]> {
    const where = [
      supplierId === undefined ? Prisma.sql`true` : Prisma.sql`v.supplier_id = ${supplierId}::uuid`,
      {
        'at-supplier': Prisma.sql`${AWAY} and u.open_net > 0`,
        late: Prisma.sql`u.place = 'handed-over' and u.open_net > 0 and x.days > s.days_to_credit`,
        soon: Prisma.sql`u.place in ('set-aside', 'to-return') and u.open_net > 0
          and u.return_by between ${today}::date and ${today}::date + ${SOON_DAYS}::int`,
        owed: Prisma.sql`u.place in ('set-aside', 'to-return', 'handed-over', 'taken-out', 'gone-for-good', 'called-off', 'never-came', 'written-off')
          and u.open_net < 0`,
      }[what],
      age === undefined ? Prisma.sql`true` : Prisma.sql`${BAND} = ${age}`,
    ];
    return this.prisma.db.$queryRaw<UnitRow[]>`
      select u.id, u.code, s.name as supplier, v.part_number as "partNumber", v.name, u.place, u.open_net::text as open,
        to_char(u.handed_over_at at time zone ${timeZone}, 'YYYY-MM-DD') as "handedOverOn", to_char(u.return_by, 'YYYY-MM-DD') as "returnBy"
      from part_unit u join part_variant v on v.id = u.variant_id join supplier s on s.id = v.supplier_id
      cross join lateral (select coalesce(${today}::date - (u.handed_over_at at time zone ${timeZone})::date, 0) as days) x
      where u.open_net <> 0 and ${Prisma.join(where, ' and ')}
      order by case when ${what} = 'soon' then u.return_by end, u.handed_over_at nulls last, u.id limit ${most}`;
  }
}
