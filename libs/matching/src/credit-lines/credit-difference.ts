import { type Decimal, toAmount, toDecimal } from '#libs/money';
import { recogniseLine } from '../lines/recognise-line.ts';
import { type CreditDifference, type CreditLine, type CreditUnit } from './credit-matching.types.ts';
import { expectedCredit } from './expected-credit.ts';

/** Suppliers deduct round percentages; 2.5 is the finest that is usual (common practice, no source). */
const ROUND_PERCENT = 2.5;

/**
 * Names how a credit differs from what was due, or undefined where it agrees within the tolerance. A shortage is *restocking
 * beyond terms* where a fee is stated on the document, or where the supplier's terms have a restocking charge and the deduction
 * is a larger round percentage; else it is *short*.
 *
 * @param line - the line that credits
 * @param unit - the unit it credits
 * @param money - its share, the fee laid on it, and the tolerance
 */
export function creditDifference(
  line: CreditLine,
  unit: CreditUnit,
  money: { readonly share: Decimal; readonly fee: Decimal; readonly tolerance: Decimal },
): CreditDifference | undefined {
  const { due, restocking } = expectedCredit(unit);
  const off = money.share.minus(money.fee).minus(due);
  if (off.abs().lessThanOrEqualTo(money.tolerance)) return undefined;
  const amount = toAmount(off.abs());
  const given = toAmount(money.share.minus(money.fee));
  const base = { lineId: line.id, unitId: unit.id, amount };
  const figures = `${given} came, ${toAmount(due)} was due`;
  if (off.greaterThan(0)) return { ...base, kind: 'over', words: `${amount} too much: ${figures}.` };
  const deducted = toDecimal(unit.charged)
    .minus(toDecimal(unit.credited ?? '0'))
    .minus(money.share)
    .plus(money.fee);
  if (isRestocking(line, unit, { deducted, fee: money.fee })) {
    const words = `${amount} kept beyond the terms: ${toAmount(deducted)} was deducted, ${toAmount(restocking)} is agreed.`;
    return { ...base, kind: 'restocking-beyond-terms', words };
  }
  return { ...base, kind: 'short', words: `${amount} missing: ${figures}.` };
}

function isRestocking(
  line: CreditLine,
  unit: CreditUnit,
  { deducted, fee }: { readonly deducted: Decimal; readonly fee: Decimal },
): boolean {
  if (fee.greaterThan(0) || recogniseLine(line.text ?? '') === 'restocking') return true;
  const charged = toDecimal(unit.charged);
  if (toDecimal(unit.restockingPercent ?? '0').isZero() || charged.isZero()) return false;
  const percent = deducted.div(charged).times(100);
  const nearest = percent.div(ROUND_PERCENT).round().times(ROUND_PERCENT);
  return charged.times(nearest).div(100).minus(deducted).abs().lessThan(0.01);
}
