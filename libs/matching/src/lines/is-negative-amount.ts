import { type DecimalString, toDecimal } from '#libs/money';

/**
 * Whether an amount takes rather than gives.
 *
 * @example isNegativeAmount('-0.00') // false
 */
export function isNegativeAmount(amount: DecimalString): boolean {
  return toDecimal(amount).lessThan(0);
}
