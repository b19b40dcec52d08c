import { type OrderQuestion } from './order-plan.types.ts';

/** Sums over every subset of the candidates; a subset is a bit pattern, bit i standing for candidate i. */
export interface OrderFigures {
  readonly count: number;
  readonly carriage: number;
  readonly returnCarriage: number;
  /** 1 − Σp: probability that none fits. */
  readonly none: number;
  /** Σ p over the subset. */
  readonly probability: Float64Array;
  /** Σ fee over the subset, the fee being what is lost on an unneeded piece. */
  readonly fee: Float64Array;
  /** Σ p·(fees of the others in the subset) + return trips, when the right one is in the subset. */
  readonly hitCost: Float64Array;
}

/**
 * Adds up once, for every subset of the candidates, what the plans need.
 *
 * @example orderFigures(question).fee[0b011] // restocking fees of the first two candidates together
 */
export function orderFigures({ candidates, carriage, returnCarriage }: OrderQuestion): OrderFigures {
  const size = 2 ** candidates.length;
  const probability = new Float64Array(size);
  const fee = new Float64Array(size);
  const ownFee = new Float64Array(size);
  const hitCost = new Float64Array(size);
  for (const [index, candidate] of candidates.entries()) {
    const bit = 2 ** index;
    const candidateFee = (candidate.price * candidate.restockingPercent) / 100;
    for (let rest = 0; rest < bit; rest += 1) {
      probability[bit + rest] = at(probability, rest) + candidate.probability;
      fee[bit + rest] = at(fee, rest) + candidateFee;
      ownFee[bit + rest] = at(ownFee, rest) + candidate.probability * candidateFee;
    }
  }
  for (let subset = 1; subset < size; subset += 1) {
    const isSingle = (subset & (subset - 1)) === 0;
    const others = at(probability, subset) * at(fee, subset) - at(ownFee, subset);
    hitCost[subset] = isSingle ? 0 : Math.max(0, others) + at(probability, subset) * returnCarriage;
  }
  const none = Math.max(0, 1 - at(probability, size - 1));
  return { count: candidates.length, carriage, returnCarriage, none, probability, fee, hitCost };
}

/** Value of a subset's figure; the arrays hold every subset, so nothing is ever missing. */
export function at(figures: Float64Array, subset: number): number {
  return figures[subset] ?? 0;
}
