/** Tables to match and the greatest total weight that another library finds for each. */
export interface LibraryCase {
  readonly seed: number;
  readonly rows: number;
  readonly columns: number;
  /** Percent of the pairs that exist. */
  readonly fillPercent: number;
  /** Largest weight. */
  readonly most: number;
  readonly total: number;
}

/**
 * Totals found by `scipy.optimize.linear_sum_assignment` (SciPy 1.17.1, a modified Jonker–Volgenant algorithm) on tables whose
 * numbers come from s ← 48271·s mod 2147483647: pair by pair, first whether it exists, then its weight.
 */
export const libraryCases: readonly LibraryCase[] = [
  { seed: 20261, rows: 8, columns: 8, fillPercent: 100, most: 1000, total: 6919 },
  { seed: 20262, rows: 8, columns: 8, fillPercent: 100, most: 5, total: 36 },
  { seed: 20263, rows: 8, columns: 8, fillPercent: 30, most: 1000, total: 5084 },
  { seed: 20264, rows: 8, columns: 8, fillPercent: 8, most: 50, total: 36 },
  { seed: 20265, rows: 10, columns: 14, fillPercent: 100, most: 1000, total: 9162 },
  { seed: 20266, rows: 10, columns: 14, fillPercent: 100, most: 5, total: 49 },
  { seed: 20267, rows: 10, columns: 14, fillPercent: 30, most: 1000, total: 7996 },
  { seed: 20268, rows: 10, columns: 14, fillPercent: 8, most: 50, total: 141 },
  { seed: 20269, rows: 20, columns: 20, fillPercent: 100, most: 1000, total: 18648 },
  { seed: 20270, rows: 20, columns: 20, fillPercent: 100, most: 5, total: 99 },
  { seed: 20271, rows: 20, columns: 20, fillPercent: 30, most: 1000, total: 15325 },
  { seed: 20272, rows: 20, columns: 20, fillPercent: 8, most: 50, total: 342 },
  { seed: 20273, rows: 30, columns: 25, fillPercent: 100, most: 1000, total: 23850 },
  { seed: 20274, rows: 30, columns: 25, fillPercent: 100, most: 5, total: 125 },
  { seed: 20275, rows: 30, columns: 25, fillPercent: 30, most: 1000, total: 22050 },
  { seed: 20276, rows: 30, columns: 25, fillPercent: 8, most: 50, total: 624 },
  { seed: 20277, rows: 40, columns: 60, fillPercent: 100, most: 1000, total: 39226 },
  { seed: 20278, rows: 40, columns: 60, fillPercent: 100, most: 5, total: 200 },
  { seed: 20279, rows: 40, columns: 60, fillPercent: 30, most: 1000, total: 36815 },
  { seed: 20280, rows: 40, columns: 60, fillPercent: 8, most: 50, total: 1513 },
  { seed: 20281, rows: 75, columns: 75, fillPercent: 100, most: 1000, total: 73472 },
  { seed: 20282, rows: 75, columns: 75, fillPercent: 100, most: 5, total: 375 },
  { seed: 20283, rows: 75, columns: 75, fillPercent: 30, most: 1000, total: 69872 },
  { seed: 20284, rows: 75, columns: 75, fillPercent: 8, most: 50, total: 2833 },
  { seed: 20285, rows: 120, columns: 100, fillPercent: 100, most: 1000, total: 98739 },
  { seed: 20286, rows: 120, columns: 100, fillPercent: 100, most: 5, total: 500 },
  { seed: 20287, rows: 120, columns: 100, fillPercent: 30, most: 1000, total: 95544 },
  { seed: 20288, rows: 120, columns: 100, fillPercent: 8, most: 50, total: 4355 },
  { seed: 20289, rows: 200, columns: 200, fillPercent: 100, most: 1000, total: 198403 },
  { seed: 20290, rows: 200, columns: 200, fillPercent: 100, most: 5, total: 1000 },
  { seed: 20291, rows: 200, columns: 200, fillPercent: 30, most: 1000, total: 195113 },
  { seed: 20292, rows: 200, columns: 200, fillPercent: 8, most: 50, total: 9049 },
  { seed: 20293, rows: 300, columns: 250, fillPercent: 100, most: 1000, total: 248953 },
  { seed: 20294, rows: 300, columns: 250, fillPercent: 100, most: 5, total: 1250 },
  { seed: 20295, rows: 300, columns: 250, fillPercent: 30, most: 1000, total: 246356 },
  { seed: 20296, rows: 300, columns: 250, fillPercent: 8, most: 50, total: 11895 },
];
