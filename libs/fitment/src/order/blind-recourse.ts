import { at, type OrderFigures } from './order-figures.ts';

/** For every set of remaining candidates: weight × expected cost of its best plan, and weight × expected number of delays. */
export interface BlindRecourse {
  readonly cost: Float64Array;
  readonly delays: Float64Array;
}

/**
 * The best blind plan for every set of candidates that may remain after a failed round. Costs are kept multiplied by the
 * set's probability, which makes renormalising unnecessary and a set of probability 0 harmless:
 * W(C) = min over T ⊆ C of p(C)·carriage + hit(T) + p(C∖T)·(fees(T) + return + delay) + W(C∖T).
 *
 * @param figures - subset sums
 * @param delayCost - cost of one more round
 */
export function blindRecourse(figures: OrderFigures, delayCost: number): BlindRecourse {
  const { carriage, returnCarriage, probability, fee, hitCost } = figures;
  const size = probability.length;
  const cost = new Float64Array(size);
  const delays = new Float64Array(size);
  for (let remaining = 1; remaining < size; remaining += 1) {
    let least = Number.POSITIVE_INFINITY;
    let leastDelays = 0;
    for (let order = remaining; order > 0; order = (order - 1) & remaining) {
      const rest = remaining ^ order;
      const missed = at(probability, rest);
      const candidate = at(hitCost, order) + missed * (at(fee, order) + returnCarriage + delayCost) + at(cost, rest);
      if (candidate >= least) continue;
      least = candidate;
      leastDelays = missed + at(delays, rest);
    }
    cost[remaining] = at(probability, remaining) * carriage + least;
    delays[remaining] = leastDelays;
  }
  return { cost, delays };
}
