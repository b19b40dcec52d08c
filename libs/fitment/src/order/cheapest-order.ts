import { type FirstOrderCosts } from './first-order-costs.ts';
import { at } from './order-figures.ts';

/** A first order with its expected cost as a line over the cost of a delay: base + delays × delayCost. */
export interface OrderLine {
  readonly order: number;
  readonly base: number;
  readonly delays: number;
}

/**
 * The cheapest first order at one cost of delay, as a line. Equal costs: fewer expected delays first, since those win as
 * soon as delays get dearer.
 *
 * @param costs - of every first order at `delayCost`
 * @param delayCost - where they were computed
 */
export function cheapestOrder(costs: FirstOrderCosts, delayCost: number): OrderLine {
  let order = 1;
  for (let other = 2; other < costs.cost.length; other += 1) {
    const difference = at(costs.cost, other) - at(costs.cost, order);
    if (difference < 0 || (difference === 0 && at(costs.delays, other) < at(costs.delays, order))) order = other;
  }
  const delays = at(costs.delays, order);
  return { order, base: at(costs.cost, order) - delays * delayCost, delays };
}
