import { Decimal, type DecimalString } from './decimal.ts';
import { MoneyError } from './money-error.ts';
import { toAmount } from './to-amount.ts';
import { toDecimal } from './to-decimal.ts';

/**
 * Shares an amount by weights so that the shares add up to it exactly. Each share is cut to the smallest unit; the units
 * left over go to the largest remainders, the earlier one first when two are equal (method of largest remainders).
 *
 * @param total amount to share; a negative one is shared by its magnitude
 * @param weights zero or more each, not all zero
 * @param options decimals of the shares, 2 unless said
 * @throws MoneyError `bad-weights`, `finer-than-places`
 * @example allocate('100.00', ['1', '1', '1']) // ['33.34', '33.33', '33.33']
 */
export function allocate(total: DecimalString, weights: readonly DecimalString[], options: { places?: number } = {}): DecimalString[] {
  const places = options.places ?? 2;
  const unitsTotal = toDecimal(total).times(new Decimal(10).pow(places));
  const exactWeights = weights.map(toDecimal);
  checkShares(unitsTotal, exactWeights);
  const units = shareUnits(unitsTotal.abs(), exactWeights);
  const sign = unitsTotal.isNegative() ? -1 : 1;
  return units.map((share) => toAmount(share.times(sign).div(new Decimal(10).pow(places)), places));
}

function checkShares(unitsTotal: Decimal, weights: readonly Decimal[]): void {
  if (!unitsTotal.isInteger()) throw new MoneyError('finer-than-places', 'The amount has more decimals than its shares may have.');
  if (weights.length === 0 || weights.some((weight) => weight.isNegative()) || weights.every((weight) => weight.isZero()))
    throw new MoneyError('bad-weights', 'Shares need weights of zero or more, at least one of them above zero.');
}

function shareUnits(unitsTotal: Decimal, weights: readonly Decimal[]): Decimal[] {
  const weightTotal = weights.reduce((sum, weight) => sum.plus(weight), new Decimal(0));
  const shares = weights.map((weight, index) => {
    const scaled = unitsTotal.times(weight);
    const units = scaled.divToInt(weightTotal);
    return { index, units, remainder: scaled.minus(units.times(weightTotal)) };
  });
  const handedOut = shares.reduce((sum, share) => sum.plus(share.units), new Decimal(0));
  const left = unitsTotal.minus(handedOut).toNumber();
  const favoured = new Set(
    [...shares]
      .sort((a, b) => b.remainder.comparedTo(a.remainder) || a.index - b.index)
      .slice(0, left)
      .map((share) => share.index),
  );
  return shares.map((share) => (favoured.has(share.index) ? share.units.plus(1) : share.units));
}
