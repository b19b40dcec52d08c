import { Injectable } from '@nestjs/common';
import { Prisma } from '#libs/db';
import { AGE_BANDS, type AgeBand } from '#libs/unit-life';
import { PrismaService } from '../../platform/database.ts';

/** Money of one supplier; amounts as decimal text. */
export interface ExposureRow {
  supplierId: string;
  supplier: string;
  phone: string;
  atSupplier: string;
  late: string;
  byAge: Record<AgeBand, string>;
  onShelf: string;
  leavesSoon: string;
  weOwe: string;
}

type SummedRow = Omit<ExposureRow, 'byAge'> & { ages: string[] };

const ages = AGE_BANDS.map(({ lastDay }, index) => {
  const above = index === 0 ? Prisma.sql`true` : Prisma.sql`days > ${Prisma.raw(String(AGE_BANDS[index - 1]?.lastDay))}`;
  const upTo = Number.isFinite(lastDay) ? Prisma.sql`days <= ${Prisma.raw(String(lastDay))}` : Prisma.sql`true`;
  return Prisma.sql`coalesce(sum(open_net) filter (where is_away and open_net > 0 and ${above} and ${upTo}), 0)::text`;
});

@Injectable()
export class ExposureRepository {
  constructor(private readonly prisma: PrismaService) {}

  /**
   * The same sums as the unit-life library's `exposure`, made by the database from indexes alone: none of the units is carried
   * here, however many have gone before. A test holds the two against each other.
   */
  async bySupplier({ today, timeZone, soonDays }: { today: string; timeZone: string; soonDays: number }): Promise<ExposureRow[]> {
    const rows = await this.prisma.db.$queryRaw<SummedRow[]>`
      select s.id as "supplierId", s.name as supplier, s.phone,
        coalesce(sum(open_net) filter (where is_away and open_net > 0), 0)::text as "atSupplier",
        coalesce(sum(open_net) filter (where is_away and open_net > 0 and has_left and days > s.days_to_credit), 0)::text as late,
        array[${Prisma.join(ages)}] as ages,
        coalesce(sum(open_net) filter (where is_shelf and open_net > 0), 0)::text as "onShelf",
        coalesce(sum(open_net) filter (where is_shelf and open_net > 0 and return_by between ${today}::date and ${today}::date + ${soonDays}::int), 0)::text
          as "leavesSoon",
        coalesce(-sum(open_net) filter (where open_net < 0), 0)::text as "weOwe"
      from (
        select variant_id, open_net, return_by, place = 'handed-over' as is_away, place in ('set-aside', 'to-return') as is_shelf,
          handed_over_at is not null as has_left,
          greatest(0, coalesce(${today}::date - (handed_over_at at time zone ${timeZone})::date, 0)) as days
        from part_unit where place in ('set-aside', 'to-return', 'handed-over') and open_net <> 0
        union all
        select variant_id, open_net, null, true, false, false, 0
        from part_unit where place in ('gone-for-good', 'called-off', 'never-came', 'written-off') and open_net <> 0
      ) x
      join part_variant v on v.id = x.variant_id join supplier s on s.id = v.supplier_id
      group by s.id
      order by sum(open_net) filter (where is_away and open_net > 0) desc nulls last, s.name`;
    return rows.map(({ ages: amounts, ...row }) => ({
      ...row,
      byAge: Object.fromEntries(AGE_BANDS.map(({ key }, index) => [key, amounts[index] ?? '0'])) as Record<AgeBand, string>,
    }));
  }
}
