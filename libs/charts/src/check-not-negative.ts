import { ChartInputError } from './chart-input-error.ts';

/**
 * Refuses an amount below zero.
 *
 * @throws ChartInputError naming the field.
 */
export function checkNotNegative(amount: number, field: string): void {
  if (amount >= 0) return;
  throw new ChartInputError('out-of-range', field, `${field} is below zero: enter how much it was, without a sign.`);
}
