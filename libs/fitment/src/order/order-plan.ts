import { checkOrderQuestion } from './check-order-question.ts';
import { firstOrderCosts } from './first-order-costs.ts';
import { at, orderFigures } from './order-figures.ts';
import { orderFlips } from './order-flips.ts';
import { type OrderPlanAnswer, type OrderPlanLine, type OrderQuestion } from './order-plan.types.ts';

/**
 * Which of several candidate variants to order at once, when unneeded ones can go back at a cost and a missing one costs a
 * delay. Compares every non-empty order by expected cost, the right part's own price left out.
 *
 * Expected cost of ordering S = carriage + Σ pᵢ·{ i in S: fees of the others + return trip if there are any; i not in S: fees
 * of S + return trip + delay + recourse } + q·(fees of S + return trip + delay), with q = 1 − Σp for *none fits*.
 * Strip first costs carriage·Σp + delay + bay; perfect information would leave carriage·Σp + delay·(1 − Σp).
 *
 * Source: expected-cost decision and expected value of perfect information as in decision-analysis textbooks (read); the
 * costs are estimates in floating point: round once, for show.
 *
 * @param question - candidates (12 at most), costs in one currency, 0 or more
 * @throws FitmentInputError `malformed` for bad figures, `impossible` for too many candidates or probabilities above 1
 * @example
 * orderPlan({
 *   candidates: [
 *     { id: 'A', probability: 0.7, price: 30, restockingPercent: 15 },
 *     { id: 'B', probability: 0.2, price: 30, restockingPercent: 15 },
 *     { id: 'C', probability: 0.1, price: 30, restockingPercent: 15 },
 *   ],
 *   carriage: 6, returnCarriage: 8, delayCost: 45,
 * }).best; // { order: ['A', 'B', 'C'], expectedCost: 23 }
 */
export function orderPlan(question: OrderQuestion): OrderPlanAnswer {
  checkOrderQuestion(question);
  const { candidates, carriage, delayCost, bayHoldCost = 0, recourse = 'blind' } = question;
  const figures = orderFigures(question);
  const { cost } = firstOrderCosts(figures, delayCost, { recourse });
  const idsOf = (order: number): string[] => candidates.filter((_, index) => (order & (2 ** index)) !== 0).map(({ id }) => id);
  const plans = Array.from({ length: cost.length - 1 }, (_, index) => ({ order: idsOf(index + 1), expectedCost: at(cost, index + 1) }));
  plans.sort((a, b) => a.expectedCost - b.expectedCost || a.order.length - b.order.length);
  const fits = 1 - figures.none;
  const best = firstOf(plans);
  return {
    plans,
    best,
    orderAll: { order: candidates.map(({ id }) => id), expectedCost: at(cost, cost.length - 1) },
    stripFirst: { expectedCost: carriage * fits + delayCost + bayHoldCost },
    perfectInformationValue: Math.max(0, best.expectedCost - (carriage * fits + delayCost * figures.none)),
    flips: orderFlips(figures, recourse).map((flip) => ({ delayCost: flip.delayCost, from: idsOf(flip.from), to: idsOf(flip.to) })),
    noneProbability: figures.none,
  };
}

function firstOf(plans: readonly OrderPlanLine[]): OrderPlanLine {
  const [first] = plans;
  if (first === undefined) throw new RangeError('A checked question has at least one plan.');
  return first;
}
