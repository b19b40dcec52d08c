import { type Box } from '../pen/pen.ts';
import { areaOutside, sharedArea } from './boxes.ts';

/** Leaving the drawing or covering another text is worse than covering a line. */
const BAD_WEIGHT = 20;

interface Surroundings {
  readonly bounds: Box;
  /** Lines and marks: better not covered. */
  readonly lines: readonly Box[];
  /** Other texts: never covered while there is a choice. */
  readonly texts: readonly Box[];
}

/**
 * Picks the first of several places for a label that covers the least of what is already there. At least one candidate is needed.
 *
 * @returns the index of the chosen candidate.
 */
export function chooseSpot(candidates: readonly Box[], { bounds, lines, texts }: Surroundings): number {
  const covered = (box: Box, others: readonly Box[]): number => others.reduce((area, other) => area + sharedArea(box, other), 0);
  const costs = candidates.map((box) => covered(box, lines) + (covered(box, texts) + areaOutside(box, bounds)) * BAD_WEIGHT);
  return costs.reduce((best, cost, index) => (cost < (costs[best] ?? Infinity) ? index : best), 0);
}
