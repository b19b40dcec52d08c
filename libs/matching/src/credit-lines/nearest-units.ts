import { type SparseWeights } from '../assignment/sparse-weights.ts';
import { type ClaimableUnit, type ClaimContext, creditPairs, type OpenLine, type UnitClaim } from './claim-units.ts';

/** A piece of a line laid on a unit. */
export type LaidPiece = Pick<UnitClaim, 'line' | 'unit' | 'share'>;

/**
 * Lays every piece on the unit it agrees with best, however many lines that has by now; among equals on the one with fewest.
 *
 * @param open - lines with pieces left
 * @param units - units to choose among
 * @param context - as for `claimUnits`
 * @returns the pieces laid, and the lines that agree with no unit
 */
export function nearestUnits(
  open: readonly OpenLine[],
  units: readonly ClaimableUnit[],
  context: ClaimContext,
): { readonly laid: readonly LaidPiece[]; readonly left: readonly OpenLine[] } {
  const { weights } = creditPairs(open, units, context);
  const load = new Int32Array(units.length);
  const laid = open.flatMap(({ line, shares }, row) =>
    shares.flatMap((share): LaidPiece[] => {
      const column = nearestColumn(weights, row, { load });
      const unit = column === undefined ? undefined : units[column]?.unit;
      if (column === undefined || unit === undefined) return [];
      load[column] = (load[column] ?? 0) + 1;
      return [{ line, unit, share }];
    }),
  );
  const left = open.filter((_, row) => weights.start[row] === weights.start[row + 1]);
  return { laid, left };
}

function nearestColumn({ start, column, weight }: SparseWeights, row: number, { load }: { readonly load: Int32Array }): number | undefined {
  const from = start[row] ?? 0;
  const to = start[row + 1] ?? 0;
  let best = from;
  for (let other = from + 1; other < to; other += 1) {
    const gain = (weight[other] ?? 0) - (weight[best] ?? 0);
    const isLighter = (load[column[other] ?? 0] ?? 0) < (load[column[best] ?? 0] ?? 0);
    if (gain > 0 || (gain === 0 && isLighter)) best = other;
  }
  return from < to ? column[best] : undefined;
}
