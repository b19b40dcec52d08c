import { type DecimalString } from '#libs/money';
import { Decimal } from '#libs/money';
import { ARRIVAL_REASONS, type ArrivalReason } from './arrival-reasons.ts';
import { openAmount } from './open-amount.ts';
import { type Unit } from './unit.ts';
import { UNIT_PLACES, type UnitPlace } from './unit-places.ts';

export interface UnitsAccount {
  readonly createdBy: Readonly<Record<ArrivalReason, number>>;
  readonly at: Readonly<Record<UnitPlace, number>>;
  /** Open money by the place of its unit, counted once. */
  readonly openAt: Readonly<Record<UnitPlace, DecimalString>>;
  readonly open: DecimalString;
  /** Every unit created is in exactly one place, and no id stands twice. */
  readonly closes: boolean;
}

/**
 * All units by why they came and by where they are, with the open money under their places.
 *
 * @param units Units
 * @returns The account
 * @example unitsAccount([newUnit('u1', 'surplus')]).at['set-aside'] // 1
 */
export function unitsAccount(units: readonly Pick<Unit, 'id' | 'arrivalReason' | 'place' | 'money'>[]): UnitsAccount {
  const createdBy = countBy(ARRIVAL_REASONS, (reason) => units.filter((unit) => unit.arrivalReason === reason).length);
  const at = countBy(UNIT_PLACES, (place) => units.filter((unit) => unit.place === place).length);
  const openAt = countBy(UNIT_PLACES, (place) => sumOpen(units.filter((unit) => unit.place === place)).toFixed());
  const placed = Object.values(at).reduce((sum, count) => sum + count, 0);
  const created = Object.values(createdBy).reduce((sum, count) => sum + count, 0);
  const isOnce = new Set(units.map((unit) => unit.id)).size === units.length;
  return { createdBy, at, openAt, open: sumOpen(units).toFixed(), closes: created === placed && placed === units.length && isOnce };
}

function sumOpen(units: readonly Pick<Unit, 'money'>[]): Decimal {
  return units.reduce((sum, unit) => sum.plus(openAmount(unit.money)), new Decimal(0));
}

function countBy<K extends string, V>(keys: readonly K[], value: (key: K) => V): Readonly<Record<K, V>> {
  return Object.fromEntries(keys.map((key) => [key, value(key)])) as Record<K, V>;
}
