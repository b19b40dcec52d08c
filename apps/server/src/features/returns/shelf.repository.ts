import { Injectable } from '@nestjs/common';
import type { UnitPlace } from '#libs/unit-life';
import { PrismaService } from '../../platform/database.ts';
import type { UnitCounts } from './account-closes.ts';

export interface MonthMoney {
  recovered: string;
  lost: string;
}

export interface SupplierContact {
  id: string;
  name: string;
  phone: string;
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

  /** Units whose story is over, and on which money came later: we owe, or are owed again. */
  async reopened(): Promise<string[]> {
    const rows = await this.prisma.db.$queryRaw<{ id: string }[]>`
      select u.id from part_unit u join unit_money m on m.unit_id = u.id
      where u.place in ('gone-for-good', 'called-off', 'never-came', 'written-off')
      group by u.id having sum(case m.kind when 'charged' then m.amount_net else -m.amount_net end) <> 0`;
    return rows.map(({ id }) => id);
  }

  async suppliers(): Promise<ReadonlyMap<string, SupplierContact>> {
    const rows = await this.prisma.db.supplier.findMany({ select: { id: true, name: true, phone: true } });
    return new Map(rows.map((row) => [row.id, row]));
  }
}
