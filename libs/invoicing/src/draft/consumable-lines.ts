import { Decimal, percentOf, sumAmounts, toAmount, toDecimal } from '#libs/money';
import { lineInputOf } from '../document/totals-input-of.ts';
import { lineNet } from '../totals/line-net.ts';
import { type UnnumberedLine } from './drafted.ts';
import { type ConsumableFact } from './job-work.ts';

/**
 * Small materials: by the piece, or a percentage of the package's labour up to a cap.
 *
 * @param facts of one package
 * @param labour the package's labour lines
 */
export function consumableLines(facts: readonly ConsumableFact[], labour: readonly UnnumberedLine[]): UnnumberedLine[] {
  const labourNet = sumAmounts(labour.map((line) => toAmount(lineNet(lineInputOf({ ...line, id: '' })))));
  return facts.map((fact) => {
    const { words, charge, vatCategory, vatRate } = fact;
    const figures =
      charge.kind === 'item'
        ? { quantity: charge.quantity, unit: charge.unit, unitPrice: charge.unitPrice }
        : { quantity: '1', unit: 'C62', unitPrice: toAmount(shareOf(labourNet, charge)) };
    return { kind: 'consumable', name: words, ...figures, vatCategory, vatRate };
  });
}

function shareOf(labourNet: Decimal, charge: { readonly percent: string; readonly maximum?: string }): Decimal {
  const share = percentOf(labourNet, charge.percent);
  return charge.maximum === undefined ? share : Decimal.min(share, toDecimal(charge.maximum));
}
