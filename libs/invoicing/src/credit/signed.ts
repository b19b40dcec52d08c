import { type Decimal } from '#libs/money';

/** Whether an amount goes from zero towards a limit without passing it; a limit of zero lets only zero through. */
export function isWithin(amount: Decimal, limit: Decimal): boolean {
  if (amount.isZero()) return true;
  return !limit.isZero() && amount.isNegative() === limit.isNegative() && amount.abs().lte(limit.abs());
}

/** The amount with the sign of another. */
export function withSignOf(amount: Decimal, sign: Decimal): Decimal {
  return sign.isNegative() ? amount.abs().negated() : amount.abs();
}
