import { type Point } from '../pen/pen.ts';

/**
 * Thins a long line to what its px can show without hiding anything: of each px column the first, lowest, highest and last point
 * stay, in their order. Every peak and dip survives, and no more than four points a column are left. Points come left to right.
 */
export function thinPoints(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  let start = 0;
  while (start < points.length) {
    const column = Math.round(points[start]?.[0] ?? 0);
    let [end, lowest, highest] = [start, start, start];
    for (let index = start; index < points.length && Math.round(points[index]?.[0] ?? 0) === column; index += 1) {
      end = index;
      if ((points[index]?.[1] ?? 0) < (points[lowest]?.[1] ?? 0)) lowest = index;
      if ((points[index]?.[1] ?? 0) > (points[highest]?.[1] ?? 0)) highest = index;
    }
    const indices = [...new Set([start, lowest, highest, end])].sort((a, b) => a - b);
    for (const index of indices) {
      const point = points[index];
      if (point !== undefined) kept.push(point);
    }
    start = end + 1;
  }
  return kept;
}
