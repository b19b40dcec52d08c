import { blindRecourse } from './blind-recourse.ts';
import { at, type OrderFigures } from './order-figures.ts';
import { type Recourse } from './order-plan.types.ts';

/** Expected cost and expected number of delays of every first order, by bit pattern; pattern 0 is no order and unused. */
export interface FirstOrderCosts {
  readonly cost: Float64Array;
  readonly delays: Float64Array;
}

/**
 * Expected cost of every possible first order at one cost of delay.
 *
 * With *none* fitting (probability q) a plan costs fees, return trip and delay once: that nothing fits is recognised at the
 * first failure. The right one not ordered: the same, and then the recourse: blind, the best plan for the rest; informed,
 * the carriage of one exact order.
 *
 * @param figures - subset sums
 * @param delayCost - cost of one more round
 * @param recourse - what follows a failed round
 */
export function firstOrderCosts(figures: OrderFigures, delayCost: number, { recourse }: { readonly recourse: Recourse }): FirstOrderCosts {
  const { carriage, returnCarriage, none, probability, fee, hitCost } = figures;
  const size = probability.length;
  const later = recourse === 'blind' ? blindRecourse(figures, delayCost) : null;
  const cost = new Float64Array(size);
  const delays = new Float64Array(size);
  for (let order = 1; order < size; order += 1) {
    const rest = size - 1 - order;
    const missed = at(probability, rest);
    const next = later === null ? missed * carriage : at(later.cost, rest);
    cost[order] = carriage + at(hitCost, order) + (missed + none) * (at(fee, order) + returnCarriage + delayCost) + next;
    delays[order] = missed + none + (later === null ? 0 : at(later.delays, rest));
  }
  return { cost, delays };
}
