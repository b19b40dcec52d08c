import { Decimal } from '#libs/money';
import type { Unit } from './units.repository.ts';

/** Whether a piece has a label of its own: it can go back, or it costs as much as the workshop has set. */
export function needsLabel({ variant, orderLine }: Pick<Unit, 'variant' | 'orderLine'>, labelFromNet: string): boolean {
  if (variant.supplier.returnDays > 0) return true;
  return new Decimal(orderLine?.priceNet ?? variant.priceNet).greaterThanOrEqualTo(labelFromNet);
}
