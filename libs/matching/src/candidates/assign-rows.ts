import { bestAssignment } from '../assignment/best-assignment.ts';
import { interchangeablePairs } from '../assignment/interchangeable-pairs.ts';
import { type CandidatePairs } from './evidence.types.ts';

/** One claim of a row matched with one column. */
export interface RowMatch {
  readonly row: number;
  readonly column: number;
  /** Points above the least. */
  readonly score: number;
  readonly agreement: number;
  /** False when another matching is as good: the pair is for a person to decide. */
  readonly isOnlyBest: boolean;
  /** Columns that would have done as well. */
  readonly otherColumns: readonly number[];
}

/**
 * Matches rows with columns by the best total score, each column at most once and each row as often as its quantity.
 *
 * @param pairs - candidates
 * @param rows - how many claims each row has, and a key that is the same for rows that are copies of each other
 * @returns the matches in the order of the rows; a row may come back fewer times than its quantity, or not at all
 */
export function assignRows(
  { weights, agreement }: CandidatePairs,
  rows: { readonly quantity: readonly number[]; readonly copyKey: readonly string[] },
): RowMatch[] {
  const rowOfClaim: number[] = [];
  for (let row = 0; row < weights.rowCount; row += 1) {
    const most = (weights.start[row + 1] ?? 0) - (weights.start[row] ?? 0);
    for (let claim = 0; claim < Math.min(rows.quantity[row] ?? 1, most); claim += 1) rowOfClaim.push(row);
  }
  const row = Int32Array.from(rowOfClaim);
  const classes = new Map<string, number>();
  const classOf = row.map((each) => {
    const key = rows.copyKey[each] ?? '';
    const known = classes.get(key) ?? classes.size;
    classes.set(key, known);
    return known;
  });
  const assignment = bestAssignment(weights, row);
  const certainty = interchangeablePairs(weights, assignment, { row, classOf });
  return [...assignment.columnOfClaim].flatMap((column, claim): RowMatch[] => {
    if (column < 0) return [];
    const own = row[claim] ?? 0;
    const pair = pairPosition({ weights, agreement }, own, { column });
    const { isOnlyBest = true, otherColumns = [] } = certainty[claim] ?? {};
    return [{ row: own, column, score: weights.weight[pair] ?? 0, agreement: agreement[pair] ?? 0, isOnlyBest, otherColumns }];
  });
}

function pairPosition({ weights }: CandidatePairs, row: number, { column }: { readonly column: number }): number {
  const from = weights.start[row] ?? 0;
  return weights.column.subarray(from, weights.start[row + 1] ?? 0).indexOf(column) + from;
}
