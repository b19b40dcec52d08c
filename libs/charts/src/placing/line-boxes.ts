import { type Box, type Point } from '../pen/pen.ts';

const REACH_PX = 6;
const EVERY_PX = 8;

/** Small boxes along a line of straight pieces, so that labels can keep clear of all of it and not only of its corners. */
export function lineBoxes(points: readonly Point[]): Box[] {
  const boxAt = (x: number, y: number): Box => ({ x: x - REACH_PX, y: y - REACH_PX, width: REACH_PX * 2, height: REACH_PX * 2 });
  return points.flatMap(([x, y], index) => {
    const [fromX, fromY] = points[index - 1] ?? [x, y];
    const count = Math.max(1, Math.min(200, Math.ceil(Math.hypot(x - fromX, y - fromY) / EVERY_PX)));
    return Array.from({ length: count }, (_, step) => {
      const share = (step + 1) / count;
      return boxAt(fromX + (x - fromX) * share, fromY + (y - fromY) * share);
    });
  });
}
