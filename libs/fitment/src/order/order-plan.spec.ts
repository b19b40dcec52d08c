import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { FitmentInputError } from '../fitment-input-error.ts';
import { type OrderCandidate, type OrderQuestion } from './order-plan.types.ts';
import { orderPlan } from './order-plan.ts';

const threeCandidates: OrderCandidate[] = [
  { id: 'A', probability: 0.7, price: 30, restockingPercent: 15 },
  { id: 'B', probability: 0.2, price: 30, restockingPercent: 15 },
  { id: 'C', probability: 0.1, price: 30, restockingPercent: 15 },
];
const worked: OrderQuestion = { candidates: threeCandidates, carriage: 6, returnCarriage: 8, delayCost: 10 };
const costOf = (question: OrderQuestion, order: readonly string[]): number => {
  const plan = orderPlan(question).plans.find((line) => line.order.join() === order.join());
  return plan?.expectedCost ?? Number.NaN;
};

const question = (recourse: 'blind' | 'informed', most = 6): fc.Arbitrary<OrderQuestion> =>
  fc
    .record({
      weights: fc.array(fc.nat(20), { minLength: 1, maxLength: most }),
      none: fc.nat(20),
      fees: fc.array(fc.nat(100), { minLength: most, maxLength: most }),
      costs: fc.tuple(fc.nat(50), fc.nat(50), fc.nat(200), fc.nat(200)),
    })
    .map(({ weights, none, fees, costs: [carriage, returnCarriage, delayCost, bayHoldCost] }) => {
      const sum = weights.reduce((total, weight) => total + weight, none);
      const candidates = weights.map((weight, index) => ({
        id: `V${index}`,
        probability: sum === 0 ? 0 : weight / sum,
        price: 40 + index,
        restockingPercent: fees[index] ?? 0,
      }));
      return { candidates, carriage, returnCarriage, delayCost, bayHoldCost, recourse };
    });

describe('three variants at £30, 15 % restocking, carriage £6, return £8, blind (computed)', () => {
  it.each([
    [10, 17.4, 20.55, 23],
    [20, 21.3, 21.55, 23],
    [45, 28.8, 24.05, 23],
  ])('delay %p: A %p, A+B %p, all %p', (delayCost, one, two, all) => {
    expect(costOf({ ...worked, delayCost }, ['A'])).toBeCloseTo(one, 9);
    expect(costOf({ ...worked, delayCost }, ['A', 'B'])).toBeCloseTo(two, 9);
    expect(costOf({ ...worked, delayCost }, ['A', 'B', 'C'])).toBeCloseTo(all, 9);
    expect(orderPlan({ ...worked, delayCost }).best.expectedCost).toBeCloseTo(Math.min(one, two, all), 9);
  });

  it('switches at 21.25 and 34.50', () => {
    const { flips } = orderPlan(worked);
    expect(flips.map(({ from, to }) => [from, to])).toEqual([
      [['A'], ['A', 'B']],
      [
        ['A', 'B'],
        ['A', 'B', 'C'],
      ],
    ]);
    expect(flips[0]?.delayCost).toBeCloseTo(21.25, 9);
    expect(flips[1]?.delayCost).toBeCloseTo(34.5, 9);
  });

  it('values perfect information at £17 when a delay costs £45', () => {
    expect(orderPlan({ ...worked, delayCost: 45 }).perfectInformationValue).toBeCloseTo(17, 9);
  });
});

describe('informed recourse and strip first, worked by hand', () => {
  const informed: OrderQuestion = { ...worked, delayCost: 45, bayHoldCost: 20, recourse: 'informed' };

  it('A alone: 6 + 0.3 × (4.50 + 8 + 45 + 6) = 25.05', () => {
    expect(costOf(informed, ['A'])).toBeCloseTo(25.05, 9);
  });

  it('A and B: 6 + 0.9 × (4.50 + 8) + 0.1 × (9 + 8 + 45 + 6) = 24.05', () => {
    expect(costOf(informed, ['A', 'B'])).toBeCloseTo(24.05, 9);
  });

  it('strip first: 6 + 45 + 20 = 71', () => {
    expect(orderPlan(informed).stripFirst.expectedCost).toBeCloseTo(71, 9);
  });

  it('a tenth of none: A alone costs 6 + 0.2 × (4.50 + 8 + 45 + 6) + 0.1 × (4.50 + 8 + 45), perfect 0.9 × 6 + 0.1 × 45', () => {
    const candidates = threeCandidates.slice(0, 2);
    const answer = orderPlan({ ...informed, candidates });
    expect(answer.noneProbability).toBeCloseTo(0.1, 12);
    expect(costOf({ ...informed, candidates }, ['A'])).toBeCloseTo(24.45, 9);
    expect(answer.stripFirst.expectedCost).toBeCloseTo(70.4, 9);
    const perfect = 9.9;
    expect(answer.perfectInformationValue).toBeCloseTo(answer.best.expectedCost - perfect, 9);
  });
});

describe('a piece that cannot go back', () => {
  it('counts as lost whole', () => {
    const candidates = threeCandidates.map((candidate) => ({ ...candidate, restockingPercent: 100 }));
    expect(costOf({ ...worked, candidates }, ['A', 'B', 'C'])).toBeCloseTo(6 + 60 + 8, 9);
  });
});

describe('refusals', () => {
  const many = Array.from({ length: 13 }, (_, index) => ({ id: `V${index}`, probability: 0.05, price: 10, restockingPercent: 0 }));
  it.each<[string, OrderQuestion, string]>([
    ['none', { ...worked, candidates: [] }, 'no candidate to order'],
    ['too many', { ...worked, candidates: many }, 'narrow them to 12 or fewer'],
    ['a negative price', { ...worked, candidates: [{ id: 'A', probability: 1, price: -1, restockingPercent: 0 }] }, 'The price of A is -1'],
    [
      'more than certain',
      { ...worked, candidates: [...threeCandidates, { id: 'D', probability: 0.2, price: 1, restockingPercent: 0 }] },
      'add up to 1.2',
    ],
    [
      'the same twice',
      { ...worked, candidates: [...threeCandidates, { id: 'A', probability: 0, price: 1, restockingPercent: 0 }] },
      'listed twice',
    ],
    [
      'a restocking charge above the price',
      { ...worked, candidates: [{ id: 'A', probability: 1, price: 1, restockingPercent: 120 }] },
      'at most 100',
    ],
    ['NaN', { ...worked, delayCost: Number.NaN }, 'The cost of a delay is no number'],
  ])('%s', (_, bad, words) => {
    expect(() => orderPlan(bad)).toThrow(FitmentInputError);
    expect(() => orderPlan(bad)).toThrow(words);
  });
});

/** Expected cost by walking through every outcome, straight from the definition. */
function walkedCost(asked: OrderQuestion, order: readonly OrderCandidate[], remaining: readonly OrderCandidate[], none: number): number {
  const fee = (candidates: readonly OrderCandidate[]): number =>
    candidates.reduce((sum, candidate) => sum + (candidate.price * candidate.restockingPercent) / 100, 0);
  const rest = remaining.filter((candidate) => !order.includes(candidate));
  const weight = rest.reduce((sum, candidate) => sum + candidate.probability, 0);
  const failed = fee(order) + asked.returnCarriage + asked.delayCost;
  let cost = asked.carriage + none * failed;
  for (const candidate of order) {
    const others = order.filter((other) => other !== candidate);
    cost += candidate.probability * (others.length === 0 ? 0 : fee(others) + asked.returnCarriage);
  }
  if (weight === 0) return cost;
  const renormalised = rest.map((candidate) => ({ ...candidate, probability: candidate.probability / weight }));
  const next = asked.recourse === 'informed' ? asked.carriage : bestWalked(asked, renormalised);
  return cost + weight * (failed + next);
}

function bestWalked(asked: OrderQuestion, remaining: readonly OrderCandidate[]): number {
  const costs = Array.from({ length: 2 ** remaining.length - 1 }, (_, index) =>
    walkedCost(
      asked,
      remaining.filter((__, bit) => ((index + 1) & (2 ** bit)) !== 0),
      remaining,
      0,
    ),
  );
  return Math.min(...costs);
}

describe('properties', () => {
  it.each(['blind', 'informed'] as const)('%s costs are those of walking through every outcome', (recourse) => {
    fc.assert(
      fc.property(question(recourse, 4), (asked) => {
        const answer = orderPlan(asked);
        for (const plan of answer.plans) {
          const order = asked.candidates.filter(({ id }) => plan.order.includes(id));
          expect(plan.expectedCost).toBeCloseTo(walkedCost(asked, order, asked.candidates, answer.noneProbability), 6);
        }
      }),
      { numRuns: 40 },
    );
  });

  it.each(['blind', 'informed'] as const)('%s: all subsets once, ascending, never NaN, information never negative', (recourse) => {
    fc.assert(
      fc.property(question(recourse), (asked) => {
        const answer = orderPlan(asked);
        expect(new Set(answer.plans.map(({ order }) => order.join())).size).toBe(2 ** asked.candidates.length - 1);
        for (const [index, plan] of answer.plans.entries()) {
          expect(Number.isFinite(plan.expectedCost)).toBe(true);
          expect(plan.expectedCost).toBeGreaterThanOrEqual(answer.plans[index - 1]?.expectedCost ?? 0);
        }
        expect(answer.best).toBe(answer.plans[0]);
        expect(answer.perfectInformationValue).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it.each(['blind', 'informed'] as const)('%s: between two flips the named order is the cheapest', (recourse) => {
    fc.assert(
      fc.property(question(recourse, 4), (asked) => {
        const { flips } = orderPlan(asked);
        for (const [index, flip] of flips.entries()) {
          const before = flips[index - 1];
          if (before !== undefined) expect(before.to).toEqual(flip.from);
          const middle = (flip.delayCost + (before?.delayCost ?? 0)) / 2;
          const there = orderPlan({ ...asked, delayCost: middle });
          expect(costOf({ ...asked, delayCost: middle }, flip.from)).toBeCloseTo(there.best.expectedCost, 6);
        }
        const last = flips.at(-1);
        if (last === undefined) return;
        const beyond = { ...asked, delayCost: last.delayCost * 2 + 1 };
        expect(costOf(beyond, last.to)).toBeCloseTo(orderPlan(beyond).best.expectedCost, 6);
      }),
      { numRuns: 60 },
    );
  });
});
