import { Decimal, percentOf, toDecimal } from '#libs/money';
import { type CreditUnit } from './credit-matching.types.ts';

/** What the terms give back for a unit, and what of it is still due. */
export interface ExpectedCredit {
  /** Charged less the agreed restocking. */
  readonly byTerms: Decimal;
  /** Less what has been credited already; never below 0. */
  readonly due: Decimal;
  /** The agreed restocking. */
  readonly restocking: Decimal;
}

/**
 * What is to be credited for a unit.
 *
 * @param unit - charged, credited so far and terms
 * @example expectedCredit({ id: 'U1', references: [], parts: [], charged: '30.00', restockingPercent: '15' }).due.toFixed(2) // '25.50'
 */
export function expectedCredit({ charged, credited = '0', restockingPercent = '0' }: CreditUnit): ExpectedCredit {
  const restocking = percentOf(charged, restockingPercent);
  const byTerms = toDecimal(charged).minus(restocking);
  return { byTerms, due: Decimal.max(0, byTerms.minus(toDecimal(credited))), restocking };
}
