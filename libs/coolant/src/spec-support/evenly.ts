/** Bounds of the whole numbers that {@link evenly} spreads out. */
export const STEPS = { min: 0, max: 1_000_000 } as const;

/**
 * Spreads whole numbers from 0 to a million evenly between two bounds.
 *
 * Why: a generator of doubles spreads over the representable numbers, nearly all of which are tiny, so that a strength
 * "from 0 to 60 %" would hardly ever be one that a car has.
 *
 * @param min Lower bound
 * @param max Upper bound
 * @example fc.integer(STEPS).map(evenly(0, 60))
 */
export function evenly(min: number, max: number): (step: number) => number {
  return (step) => min + ((max - min) * step) / STEPS.max;
}
