import { Decimal, type DecimalString, toDecimal } from '#libs/money';
import { type Day, daysBetween } from './calendar-days.ts';
import { isAway } from './claim.ts';
import { type UnitPlace } from './unit-places.ts';

/** Ages since hand-over by which money at suppliers is shown; the last band has no end. */
export const AGE_BANDS = [
  { key: 'to-7', lastDay: 7 },
  { key: 'to-14', lastDay: 14 },
  { key: 'to-30', lastDay: 30 },
  { key: 'to-60', lastDay: 60 },
  { key: 'over-60', lastDay: Infinity },
] as const;

export type AgeBand = (typeof AGE_BANDS)[number]['key'];

export interface ExposedUnit {
  readonly supplierId: string;
  readonly place: UnitPlace;
  /** Open amount, net. */
  readonly open: DecimalString;
  readonly handedOverOn: Day | null;
  readonly creditDueOn: Day | null;
  readonly lastReturnOn: Day | null;
}

export interface SupplierExposure {
  readonly supplierId: string;
  /** Sent back (or otherwise away), money not here yet; by age since hand-over. */
  readonly atSupplier: DecimalString;
  readonly late: DecimalString;
  readonly byAge: Readonly<Record<AgeBand, DecimalString>>;
  /** Still on our shelf, going back or undecided; and what of it has to leave within the next days. */
  readonly onShelf: DecimalString;
  readonly leavesSoon: DecimalString;
  /** Credited too much: we owe. */
  readonly weOwe: DecimalString;
}

const SHELF: readonly UnitPlace[] = ['to-return', 'set-aside'];

/**
 * Money at suppliers: how much, how old, how much of it late, and what must leave the shelf soon. Fitted, sold and stocked
 * units are not exposed: their open amount is what they cost us.
 *
 * @param units Units with their open amounts and dates
 * @param context Today, and how many days 'soon' is
 * @returns One row per supplier that has any, by money at the supplier, most first
 * @throws RangeError when a date is none
 * @example exposure([{ supplierId: 's', place: 'handed-over', open: '58.60', handedOverOn: '2026-04-23', creditDueOn: '2026-05-23', lastReturnOn: null }],
 *   { today: '2026-06-09', soonDays: 7 })[0].late // '58.60'
 */
export function exposure(
  units: readonly ExposedUnit[],
  context: { readonly today: Day; readonly soonDays: number },
): readonly SupplierExposure[] {
  const bySupplier = new Map<string, ExposedUnit[]>();
  for (const unit of units) {
    if (!isAway(unit.place) && !SHELF.includes(unit.place)) continue;
    if (toDecimal(unit.open).isZero()) continue;
    const own = bySupplier.get(unit.supplierId);
    if (own) own.push(unit);
    else bySupplier.set(unit.supplierId, [unit]);
  }
  const rows = [...bySupplier].map(([supplierId, own]) => ofSupplier(supplierId, own, context));
  return rows.sort((a, b) => toDecimal(b.atSupplier).comparedTo(a.atSupplier) || (a.supplierId < b.supplierId ? -1 : 1));
}

function ofSupplier(
  supplierId: string,
  units: readonly ExposedUnit[],
  { today, soonDays }: { readonly today: Day; readonly soonDays: number },
): SupplierExposure {
  const owedToUs = units.filter((unit) => toDecimal(unit.open).greaterThan(0));
  const away = owedToUs.filter((unit) => isAway(unit.place));
  const shelf = owedToUs.filter((unit) => SHELF.includes(unit.place));
  const bandOf = (unit: ExposedUnit): AgeBand => ageBand(unit.handedOverOn === null ? 0 : daysBetween(unit.handedOverOn, today));
  const byAge = Object.fromEntries(AGE_BANDS.map(({ key }) => [key, sum(away.filter((unit) => bandOf(unit) === key))]));
  return {
    supplierId,
    atSupplier: sum(away),
    late: sum(away.filter((unit) => unit.creditDueOn !== null && daysBetween(unit.creditDueOn, today) > 0)),
    byAge: byAge as Record<AgeBand, DecimalString>,
    onShelf: sum(shelf),
    leavesSoon: sum(shelf.filter((unit) => unit.lastReturnOn !== null && isSoon(daysBetween(today, unit.lastReturnOn), soonDays))),
    weOwe: sum(units.filter((unit) => toDecimal(unit.open).lessThan(0))).replace('-', ''),
  };
}

function isSoon(daysLeft: number, soonDays: number): boolean {
  return daysLeft >= 0 && daysLeft <= soonDays;
}

function ageBand(days: number): AgeBand {
  return AGE_BANDS.find((band) => days <= band.lastDay)?.key ?? 'over-60';
}

function sum(units: readonly ExposedUnit[]): DecimalString {
  return units.reduce((total, unit) => total.plus(toDecimal(unit.open)), new Decimal(0)).toFixed(2);
}
