import { cheapestOrder, type OrderLine } from './cheapest-order.ts';
import { firstOrderCosts } from './first-order-costs.ts';
import { at, type OrderFigures } from './order-figures.ts';
import { type Recourse } from './order-plan.types.ts';

const RELATIVE_SLACK = 1e-10;

/** From `delayCost` on, `order` is the cheapest first order. */
export interface OrderSwitch {
  readonly delayCost: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Where the cheapest first order changes as the cost of a delay rises from 0 without limit.
 *
 * Every plan with its recourse costs base + delays × delayCost, so the cheapest cost is a concave chain of lines. Its corners
 * are found by crossing two known lines and asking what is cheapest at the crossing: either one of the two, a corner, or a
 * line below both, and the search goes on at its two sides.
 *
 * Source: the parametric search of Eisner and Severance, J. ACM 23(4), 1976 (from memory).
 *
 * @param figures - subset sums
 * @param recourse - what follows a failed round
 * @returns the changes in rising order of delay cost, as bit patterns
 */
export function orderFlips(figures: OrderFigures, recourse: Recourse): OrderSwitch[] {
  const cheapestAt = (delayCost: number): OrderLine => cheapestOrder(firstOrderCosts(figures, delayCost, { recourse }), delayCost);
  const corners: { delayCost: number; from: OrderLine; to: OrderLine }[] = [];
  const search = (left: OrderLine, right: OrderLine): void => {
    if (left.delays <= right.delays) return;
    const crossing = (right.base - left.base) / (left.delays - right.delays);
    if (!Number.isFinite(crossing) || crossing <= 0) return;
    const lowest = cheapestAt(crossing);
    const chain = left.base + left.delays * crossing;
    const isBelow = lowest.base + lowest.delays * crossing < chain - RELATIVE_SLACK * (1 + Math.abs(chain));
    if (!isBelow) {
      corners.push({ delayCost: crossing, from: left, to: right });
      return;
    }
    search(left, lowest);
    search(lowest, right);
  };
  search(cheapestAt(0), orderWithoutDelay(figures));
  return corners.map(({ delayCost, from, to }) => ({ delayCost, from: from.order, to: to.order })).filter(({ from, to }) => from !== to);
}

/** However dear a delay: order every candidate that can be the right one. */
function orderWithoutDelay({ count, carriage, returnCarriage, none, probability, fee, hitCost }: OrderFigures): OrderLine {
  let order = 0;
  for (let index = 0; index < count; index += 1) if (at(probability, 2 ** index) > 0) order += 2 ** index;
  const everything = order === 0 ? 1 : order;
  return { order: everything, base: carriage + at(hitCost, everything) + none * (at(fee, everything) + returnCarriage), delays: none };
}
