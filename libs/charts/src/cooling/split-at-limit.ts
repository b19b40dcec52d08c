import { type CoolingPoint } from './cooling-data.ts';

/** A piece of a line that lies wholly on one side of the limit. */
export interface SidePiece {
  readonly isOver: boolean;
  readonly points: readonly CoolingPoint[];
}

const crossing = (a: CoolingPoint, b: CoolingPoint, limitC: number): CoolingPoint => {
  const rise = b.tempC / 2 - a.tempC / 2;
  const share = rise === 0 ? 0 : Math.max(0, Math.min(1, (limitC / 2 - a.tempC / 2) / rise));
  return { clockMin: a.clockMin + (b.clockMin - a.clockMin) * share, tempC: limitC };
};

/**
 * Cuts a line where it crosses the limit, so that each side can be drawn in its own way. A point on the limit counts as under it.
 */
export function splitAtLimit(points: readonly CoolingPoint[], limitC: number): SidePiece[] {
  const pieces: { isOver: boolean; points: CoolingPoint[] }[] = [];
  points.forEach((point, index) => {
    const isOver = point.tempC > limitC;
    const piece = pieces.at(-1);
    const last = points[index - 1];
    if (piece === undefined || last === undefined) {
      pieces.push({ isOver, points: [point] });
    } else if (piece.isOver === isOver) {
      piece.points.push(point);
    } else {
      const cut = crossing(last, point, limitC);
      piece.points.push(cut);
      pieces.push({ isOver, points: [cut, point] });
    }
  });
  return pieces;
}
