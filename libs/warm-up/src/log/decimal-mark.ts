/** Counts how numbers are written in a handful of cells: `82,5` or `82.5`. A comma that separates columns can't be one. */
export function decimalMark(cells: readonly string[]): '.' | ',' {
  let commas = 0;
  let dots = 0;
  for (const cell of cells) {
    if (/^\s*[+-]?\d*,\d+/.test(cell)) commas += 1;
    if (/^\s*[+-]?\d*\.\d+/.test(cell)) dots += 1;
  }
  return commas > dots ? ',' : '.';
}
