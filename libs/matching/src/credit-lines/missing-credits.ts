import { type Decimal, toAmount } from '#libs/money';
import { type CreditDifference, type CreditUnit } from './credit-matching.types.ts';
import { expectedCredit } from './expected-credit.ts';

/**
 * Units that have left, with money due, and no line that speaks of them.
 *
 * @param units - that no line was matched with
 * @param context - today, and the tolerance of amounts
 */
export function missingCredits(
  units: readonly CreditUnit[],
  { asOf, tolerance }: { readonly asOf: string | undefined; readonly tolerance: Decimal },
): CreditDifference[] {
  return units.flatMap((unit): CreditDifference[] => {
    const { due } = expectedCredit(unit);
    if ((unit.handedOverOn ?? null) === null || due.lessThanOrEqualTo(tolerance)) return [];
    const dueOn = unit.creditDueOn ?? null;
    const isOverdue = asOf !== undefined && dueOn !== null && dueOn < asOf;
    const since = dueOn === null ? '' : isOverdue ? `, due since ${dueOn}` : `, due on ${dueOn}`;
    return [{ kind: 'not-credited', unitId: unit.id, amount: toAmount(due), isOverdue, words: `${toAmount(due)} not credited${since}.` }];
  });
}
