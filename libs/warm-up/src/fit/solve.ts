/** Solves a small set of linear equations by elimination with pivoting; null when the columns cannot be told apart. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const size = right.length;
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  const scale = rows.map((row, index) => Math.abs(row[index] ?? 0));
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < size; row += 1) {
      if (Math.abs(rows[row]?.[column] ?? 0) > Math.abs(rows[pivot]?.[column] ?? 0)) pivot = row;
    }
    const top = rows[pivot];
    const other = rows[column];
    if (!top || !other) return null;
    rows[pivot] = other;
    rows[column] = top;
    const lead = top[column] ?? 0;
    if (Math.abs(lead) <= 1e-10 * (scale[column] ?? 0) || lead === 0) return null;
    for (let row = column + 1; row < size; row += 1) {
      const line = rows[row];
      if (!line) continue;
      const factor = (line[column] ?? 0) / lead;
      if (factor === 0) continue;
      for (let cell = column; cell <= size; cell += 1) line[cell] = (line[cell] ?? 0) - factor * (top[cell] ?? 0);
    }
  }
  const result = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row -= 1) {
    const line = rows[row];
    let sum = line?.[size] ?? 0;
    for (let cell = row + 1; cell < size; cell += 1) sum -= (line?.[cell] ?? 0) * (result[cell] ?? 0);
    result[row] = sum / (line?.[row] ?? 1);
  }
  return result;
}
