import { Injectable } from '@nestjs/common';
import { creditDueOn, type Day, daysBetween, dueToReturn } from '#libs/unit-life';
import { Clock } from '../../platform/clock.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { dayBounds, isoDay } from '../../web/dates.ts';
import type { UnitCounts } from './account-closes.ts';
import { Exposure, type ExposureRow } from './exposure.service.ts';
import { backAgainst, toCandidate } from './return-candidate.ts';
import { noSupplier } from './returns.errors.ts';
import { type MonthMoney, ShelfRepository } from './shelf.repository.ts';
import { type Unit, UnitsRepository } from './units.repository.ts';

/** A piece on the shelf or at its supplier, with its days. */
export interface ShelfUnit {
  unit: Unit;
  open: string;
  /** Until it must leave; null where there is no such day. */
  daysLeft: number | null;
  sent: { day: Day; days: number; evidence: string } | null;
  /** Past the supplier's days to credit; null where it is not. */
  daysLate: number | null;
  /** Why its supplier will not take it back. */
  against: string | null;
  isDue: boolean;
}

export interface Shelf {
  /** The most urgent of them. */
  units: readonly ShelfUnit[];
  /** How many more there are. */
  more: number;
  suppliers: readonly ExposureRow[];
  month: MonthMoney;
  counts: UnitCounts;
  today: Day;
  now: Date;
  timeZone: string;
  currency: string;
}

/** A page of more rows helps nobody: the others wait behind the most urgent. */
const MOST_SHOWN = 60;
const DAY_MS = 86_400_000;

/** What lies on the shelf, what is out at suppliers, and whether every piece is accounted for. */
@Injectable()
export class ShelfService {
  constructor(
    private readonly units: UnitsRepository,
    private readonly rows: ShelfRepository,
    private readonly exposure: Exposure,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  async open(): Promise<Shelf> {
    const when = await this.when();
    const [urgent, suppliers, counts, month] = await Promise.all([
      this.rows.mostUrgent({ ...when, most: MOST_SHOWN }),
      this.exposure.bySupplier(),
      this.rows.counts(),
      this.rows.moneySince(dayBounds(new Date(when.now.getTime() - 29 * DAY_MS), when.timeZone).from),
    ]);
    const units = await this.shown(await this.units.byIds(urgent.ids), when);
    return { units, more: urgent.all - units.length, suppliers, counts, month, ...when };
  }

  /** What waits here to go back to one supplier. */
  async forSupplier(supplierId: string): Promise<{ units: ShelfUnit[]; currency: string }> {
    if (!(await this.rows.supplierExists(supplierId))) throw noSupplier();
    const when = await this.when();
    return { units: await this.shown(await this.units.toReturnTo(supplierId, MOST_SHOWN), when), currency: when.currency };
  }

  private async shown(units: readonly Unit[], when: { today: Day; leadDays: number; timeZone: string }): Promise<ShelfUnit[]> {
    const sentAt = await this.units.sentAt(units.filter(({ place }) => place === 'handed-over').map(({ id }) => id));
    return units.map((unit) => toShelfUnit(unit, { sent: sentAt.get(unit.id), ...when }));
  }

  private async when(): Promise<{ today: Day; now: Date; leadDays: number; timeZone: string; currency: string }> {
    const { timeZone, currency, returnLeadDays: leadDays } = await this.workshop.get();
    const now = this.clock.now();
    return { today: isoDay(now, timeZone), now, leadDays, timeZone, currency };
  }
}

function toShelfUnit(
  unit: Unit,
  { sent, today, leadDays, timeZone }: { sent: { at: Date; evidence: string } | undefined; today: Day; leadDays: number; timeZone: string },
): ShelfUnit {
  const sentOn = sent && isoDay(sent.at, timeZone);
  const late = sentOn === undefined ? 0 : daysBetween(creditDueOn(unit.variant.supplier, sentOn), today);
  const { due, daysLeft } = dueToReturn(toCandidate(unit), { today, leadDays, isProofPassed: false });
  return {
    unit,
    daysLeft,
    open: unit.openNet,
    sent: sent && sentOn !== undefined ? { day: sentOn, days: Math.max(0, daysBetween(sentOn, today)), evidence: sent.evidence } : null,
    daysLate: unit.place === 'handed-over' && late > 0 ? late : null,
    against: backAgainst(unit, today),
    isDue: due && (unit.place === 'set-aside' || unit.place === 'to-return'),
  };
}
