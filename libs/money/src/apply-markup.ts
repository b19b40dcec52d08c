import { checkMarkupRule } from './check-markup-rule.ts';
import { Decimal, type DecimalString } from './decimal.ts';
import { type MarkupBand, type MarkupRule } from './markup-rule.ts';
import { MoneyError } from './money-error.ts';
import { roundQuotient } from './round-quotient.ts';
import { toAmount } from './to-amount.ts';
import { toDecimal } from './to-decimal.ts';

/**
 * The selling price of a part from what it cost, before tax, to the cent (or to the rule's step). In a banded rule a dearer
 * part never sells for less than the dearest one of the band below, so prices do not fall at a band's edge.
 *
 * @param cost what one piece cost, before tax, zero or more
 * @throws MoneyError `bad-markup-rule`, `not-a-decimal`; ask {@link checkMarkupRule} first
 * @example applyMarkup('20.00', { kind: 'percent', percent: '30' }) // '26.00'
 * @example applyMarkup('20.00', { kind: 'margin', percent: '20' }) // '25.00'
 */
export function applyMarkup(cost: DecimalString, rule: MarkupRule): DecimalString {
  const problem = checkMarkupRule(rule)[0];
  if (problem !== undefined) throw new MoneyError('bad-markup-rule', problem);
  const step = toDecimal(rule.roundTo ?? '0.01');
  const { dividend, divisor } = priceQuotient(toDecimal(cost), rule);
  return toAmount(roundQuotient(dividend, divisor.times(step), { places: 0 }).times(step));
}

function priceQuotient(cost: Decimal, rule: MarkupRule): { dividend: Decimal; divisor: Decimal } {
  const hundred = new Decimal(100);
  switch (rule.kind) {
    case 'percent':
      return { dividend: cost.times(hundred.plus(rule.percent)), divisor: hundred };
    case 'margin':
      return { dividend: cost.times(hundred), divisor: hundred.minus(rule.percent) };
    case 'amount':
      return { dividend: cost.plus(rule.amount), divisor: new Decimal(1) };
    case 'bands':
      return { dividend: bandedPrice(cost, rule.bands).times(hundred), divisor: hundred };
  }
}

function bandedPrice(cost: Decimal, bands: readonly MarkupBand[]): Decimal {
  let floor = new Decimal(0);
  for (const band of bands) {
    const factor = toDecimal(band.percent).div(100).plus(1);
    if (band.upToCost === null || cost.lte(band.upToCost)) return Decimal.max(cost.times(factor), floor);
    floor = Decimal.max(floor, toDecimal(band.upToCost).times(factor));
  }
  throw new MoneyError('bad-markup-rule', 'No band takes this cost.');
}
