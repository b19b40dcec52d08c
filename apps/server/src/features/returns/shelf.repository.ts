import { Injectable } from '@nestjs/common';
import type { UnitPlace } from '#libs/unit-life';
import { PrismaService } from '../../platform/database.ts';
import type { UnitCounts } from './account-closes.ts';

export interface MonthMoney {
  recovered: string;
  lost: string;
}

@Injectable()
export class ShelfRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** How many units there are, where they are, and all moves between places: told apart, so that each can be held against the other. */
  async counts(): Promise<UnitCounts> {
    const [made, places, moves] = await Promise.all([
      this.prisma.db.partUnit.count(),
      this.prisma.db.$queryRaw<{ place: UnitPlace; units: number }[]>`select place, count(*)::int as units from part_unit group by 1`,
      this.prisma.db.$queryRaw<UnitCounts['moves']>`select "from", "to", count(*)::int as units from unit_move group by 1, 2`,
    ]);
    return { made, moves, at: new Map(places.map(({ place, units }) => [place, units])) };
  }

  /** Came back and was given up since then. */
  async moneySince(from: Date): Promise<MonthMoney> {
    const [row] = await this.prisma.db.$queryRaw<MonthMoney[]>`
      select coalesce(sum(amount_net) filter (where kind in ('credited', 'carrier-paid')), 0)::text as recovered,
        coalesce(sum(amount_net) filter (where kind = 'loss-accepted'), 0)::text as lost
      from unit_money where at >= ${from}`;
    return row ?? { recovered: '0', lost: '0' };
  }

  /**
   * What there is to do on the shelf, the most urgent first: owed by us, on its way back, late at its supplier, near its last day,
   * taken out, waiting for its credit, set aside for a job. Of many only the first; `all` says of how many.
   */
  async mostUrgent({ today, timeZone, leadDays, most }: { today: string; timeZone: string; leadDays: number; most: number }): Promise<{
    ids: string[];
    all: number;
  }> {
    const rows = await this.prisma.db.$queryRaw<{ id: string; all: number }[]>`
      select x.id, count(*) over ()::int as all from (
        select u.id, u.return_by, u.handed_over_at, case
          when u.open_net < 0 then 0
          when u.place = 'to-return' then 1
          when u.place = 'handed-over' and ${today}::date - (u.handed_over_at at time zone ${timeZone})::date > s.days_to_credit then 2
          when u.place = 'set-aside' and u.return_by <= ${today}::date + ${leadDays}::int then 3
          when u.place = 'taken-out' then 4 when u.place = 'handed-over' then 5 else 6 end as urgency
        from part_unit u join part_variant v on v.id = u.variant_id join supplier s on s.id = v.supplier_id
        where u.place in ('set-aside', 'to-return', 'handed-over', 'taken-out')
        union all
        select id, null, null, 0 from part_unit
        where open_net <> 0 and place in ('gone-for-good', 'called-off', 'never-came', 'written-off')
      ) x
      order by x.urgency, x.return_by nulls last, x.handed_over_at, x.id limit ${most}`;
    return { ids: rows.map(({ id }) => id), all: rows[0]?.all ?? 0 };
  }

  async supplierExists(id: string): Promise<boolean> {
    return (await this.prisma.db.supplier.count({ where: { id } })) > 0;
  }
}
