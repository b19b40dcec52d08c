/**
 * Weights of the pairs that may be matched, row by row: the pairs of row r are at positions start[r] … start[r + 1] − 1.
 * Rows may repeat: a line of quantity three is one entry here and three claims on it.
 */
export interface SparseWeights {
  readonly rowCount: number;
  readonly columnCount: number;
  readonly start: Int32Array;
  readonly column: Int32Array;
  /** Whole numbers above 0: what matching the pair is worth. Not being matched is worth 0. */
  readonly weight: Int32Array;
}

/**
 * Sorts loose pairs into rows.
 *
 * @param rowCount - number of rows
 * @param columnCount - number of columns
 * @param pairs - weight above 0, each row and column at most once together
 * @example sparseWeights(1, 2, [{ row: 0, column: 1, weight: 5 }]).column // Int32Array [1]
 */
export function sparseWeights(
  rowCount: number,
  columnCount: number,
  pairs: readonly { readonly row: number; readonly column: number; readonly weight: number }[],
): SparseWeights {
  const start = new Int32Array(rowCount + 1);
  for (const { row } of pairs) start[row + 1] = (start[row + 1] ?? 0) + 1;
  for (let row = 0; row < rowCount; row += 1) start[row + 1] = (start[row + 1] ?? 0) + (start[row] ?? 0);
  const next = start.slice();
  const column = new Int32Array(pairs.length);
  const weight = new Int32Array(pairs.length);
  for (const pair of pairs) {
    const position = next[pair.row] ?? 0;
    column[position] = pair.column;
    weight[position] = pair.weight;
    next[pair.row] = position + 1;
  }
  return { rowCount, columnCount, start, column, weight };
}
