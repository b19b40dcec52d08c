import { type DecimalString } from '#libs/money';
import { percentOf, roundHalfAway, toDecimal } from '#libs/money';
import { addDays, type Day } from './calendar-days.ts';

/** When the return window begins to run. */
export const WINDOW_STARTS = ['ordered', 'arrived', 'invoiced'] as const;

export type WindowStart = (typeof WINDOW_STARTS)[number];

export interface SupplierTerms {
  readonly returnDays: number;
  readonly windowStart: WindowStart;
  readonly restockingPercent: DecimalString;
  readonly unopenedOnly: boolean;
  readonly daysToCredit: number;
}

export interface UnitDays {
  readonly orderedOn: Day | null;
  readonly arrivedOn: Day | null;
  readonly invoicedOn: Day | null;
}

/**
 * The last day on which a unit may leave for its supplier: the start of the window plus its days.
 *
 * @param terms The supplier's terms
 * @param days When it was ordered, came, and was invoiced
 * @returns The day, or null when the window has not begun to run
 * @throws RangeError when a date is none
 * @example lastReturnDay({ returnDays: 14, windowStart: 'arrived', restockingPercent: '10', unopenedOnly: false, daysToCredit: 30 },
 *   { orderedOn: '2026-06-05', arrivedOn: '2026-06-09', invoicedOn: null }) // '2026-06-23'
 */
export function lastReturnDay(terms: Pick<SupplierTerms, 'returnDays' | 'windowStart'>, days: UnitDays): Day | null {
  const start = { ordered: days.orderedOn, arrived: days.arrivedOn, invoiced: days.invoicedOn }[terms.windowStart];
  return start === null ? null : addDays(start, terms.returnDays);
}

/**
 * The day by which the credit for a returned unit should be here.
 *
 * @param terms The supplier's terms
 * @param handedOverOn The day it was handed over
 * @returns The day
 * @throws RangeError when the date is none
 * @example creditDueOn({ daysToCredit: 21 }, '2026-05-07') // '2026-05-28'
 */
export function creditDueOn(terms: Pick<SupplierTerms, 'daysToCredit'>, handedOverOn: Day): Day {
  return addDays(handedOverOn, terms.daysToCredit);
}

/**
 * What the terms promise back for a charge: less the restocking share, rounded half away from zero to cents.
 *
 * @param terms The supplier's terms
 * @param chargedNet What was charged
 * @returns Net amount
 * @example expectedCredit({ restockingPercent: '10' }, '31.20') // '28.08'
 */
export function expectedCredit(terms: Pick<SupplierTerms, 'restockingPercent'>, chargedNet: DecimalString): DecimalString {
  const charged = toDecimal(chargedNet);
  return roundHalfAway(charged.minus(percentOf(charged, terms.restockingPercent)), 2).toFixed(2);
}
