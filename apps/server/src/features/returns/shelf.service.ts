import { Injectable } from '@nestjs/common';
import { creditDueOn, type Day, daysBetween, dueToReturn, exposure, openAmount, type SupplierExposure } from '#libs/unit-life';
import { Clock } from '../../platform/clock.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { dayBounds, isoDay } from '../../web/dates.ts';
import type { UnitCounts } from './account-closes.ts';
import { backAgainst, dayOf, toCandidate } from './return-candidate.ts';
import { noSupplier } from './returns.errors.ts';
import { type MonthMoney, ShelfRepository, type SupplierContact } from './shelf.repository.ts';
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
  units: readonly ShelfUnit[];
  suppliers: readonly (SupplierExposure & SupplierContact)[];
  month: MonthMoney;
  counts: UnitCounts;
  today: Day;
  now: Date;
  timeZone: string;
  currency: string;
}

const SOON_DAYS = 7;
const DAY_MS = 86_400_000;

/** What lies on the shelf, what is out at suppliers, and whether every piece is accounted for. */
@Injectable()
export class ShelfService {
  constructor(
    private readonly units: UnitsRepository,
    private readonly rows: ShelfRepository,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  async open(): Promise<Shelf> {
    const { timeZone, currency, returnLeadDays: leadDays } = await this.workshop.get();
    const now = this.clock.now();
    const today = isoDay(now, timeZone);
    const [here, reopenedIds, counts, month, contacts] = await Promise.all([
      this.units.at(['set-aside', 'to-return', 'handed-over', 'taken-out']),
      this.rows.reopened(),
      this.rows.counts(),
      this.rows.moneySince(dayBounds(new Date(now.getTime() - 29 * DAY_MS), timeZone).from),
      this.rows.suppliers(),
    ]);
    const all = [...here, ...(await this.units.byIds(reopenedIds))];
    const sentAt = await this.units.sentAt(all.filter(({ place }) => place === 'handed-over').map(({ id }) => id));
    const units = all.map((unit) => toShelfUnit(unit, { sent: sentAt.get(unit.id), today, leadDays, timeZone }));
    return { units, suppliers: exposed(units, today, contacts), month, counts, today, now, timeZone, currency };
  }

  async forSupplier(supplierId: string): Promise<Shelf> {
    if (!(await this.rows.suppliers()).has(supplierId)) throw noSupplier();
    return this.open();
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
    open: openAmount(unit.money).toFixed(2),
    sent: sent && sentOn !== undefined ? { day: sentOn, days: Math.max(0, daysBetween(sentOn, today)), evidence: sent.evidence } : null,
    daysLate: unit.place === 'handed-over' && late > 0 ? late : null,
    against: backAgainst(unit, today),
    isDue: due && (unit.place === 'set-aside' || unit.place === 'to-return'),
  };
}

function exposed(units: readonly ShelfUnit[], today: Day, contacts: ReadonlyMap<string, SupplierContact>): Shelf['suppliers'] {
  const rows = exposure(
    units.map(({ unit, open, sent }) => ({
      supplierId: unit.variant.supplier.id,
      place: unit.place,
      open,
      handedOverOn: sent?.day ?? null,
      creditDueOn: sent ? creditDueOn(unit.variant.supplier, sent.day) : null,
      lastReturnOn: unit.returnBy && dayOf(unit.returnBy),
    })),
    { today, soonDays: SOON_DAYS },
  );
  return rows.map((row) => ({ ...row, ...(contacts.get(row.supplierId) ?? { id: row.supplierId, name: 'somebody', phone: '' }) }));
}
