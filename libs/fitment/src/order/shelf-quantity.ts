import { normalQuantile } from '../probability/normal-quantile.ts';
import { numberProblems } from '../number-problems.ts';
import { refuseProblems } from '../refuse-problems.ts';

/** What is thought about the number that will be wanted. */
export type Demand =
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  | { readonly kind: 'triangular'; readonly low: number; readonly mode: number; readonly high: number }
  | { readonly kind: 'normal'; readonly mean: number; readonly standardDeviation: number };

/**
 * How many pieces to keep on the shelf: the demand that is not exceeded with the probability of the critical ratio. Not
 * rounded; round it up where the next piece still pays.
 *
 * @param ratio - from `criticalRatio`, above 0 and below 1
 * @param demand - in pieces over the time until they can go back
 * @throws FitmentInputError when the bounds are not in order
 * @example shelfQuantity(0.4, { kind: 'uniform', low: 80, high: 150 }) // 108
 */
export function shelfQuantity(ratio: number, demand: Demand): number {
  refuseProblems('malformed', numberProblems(ratio, { field: 'ratio', words: 'The critical ratio', above: 0, below: 1 }));
  switch (demand.kind) {
    case 'uniform':
      checkOrder([demand.low, demand.high]);
      return demand.low + ratio * (demand.high - demand.low);
    case 'triangular':
      checkOrder([demand.low, demand.mode, demand.high]);
      return triangularQuantile(ratio, demand);
    case 'normal':
      refuseProblems('malformed', [
        ...numberProblems(demand.mean, { field: 'mean', words: 'The mean demand', min: 0 }),
        ...numberProblems(demand.standardDeviation, { field: 'standardDeviation', words: 'The spread of demand', min: 0 }),
      ]);
      return demand.mean + demand.standardDeviation * normalQuantile(ratio);
  }
}

function triangularQuantile(ratio: number, { low, mode, high }: { low: number; mode: number; high: number }): number {
  const range = high - low;
  if (range === 0) return low;
  const isLeft = ratio <= (mode - low) / range;
  return isLeft ? low + Math.sqrt(ratio * range * (mode - low)) : high - Math.sqrt((1 - ratio) * range * (high - mode));
}

function checkOrder(bounds: readonly number[]): void {
  const isRising = bounds.every((bound, index) => Number.isFinite(bound) && bound >= (bounds[index - 1] ?? 0));
  refuseProblems(
    'malformed',
    isRising ? [] : [{ field: 'demand', message: 'Give the lowest, likeliest and highest demand as rising numbers of 0 or more.' }],
  );
}
