import { describe, expect, it } from '@jest/globals';
import { bestAssignment } from './best-assignment.ts';
import { type LibraryCase, libraryCases } from './library-cases.spec-data.ts';
import { sparseWeights } from './sparse-weights.ts';

const MODULUS = 2_147_483_647;

function pairsOf({ seed, rows, columns, fillPercent, most }: LibraryCase): { row: number; column: number; weight: number }[] {
  let state = seed;
  const next = (): number => {
    state = (state * 48_271) % MODULUS;
    return state;
  };
  const pairs: { row: number; column: number; weight: number }[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const exists = next() % 100 < fillPercent;
      const weight = 1 + (next() % most);
      if (exists) pairs.push({ row, column, weight });
    }
  }
  return pairs;
}

describe('bestAssignment against another library', () => {
  it.each(libraryCases)('$rows × $columns, $fillPercent % of pairs, weights to $most: $total', (one) => {
    const weights = sparseWeights(one.rows, one.columns, pairsOf(one));
    const { totalWeight } = bestAssignment(
      weights,
      Int32Array.from({ length: one.rows }, (_, row) => row),
    );
    expect(totalWeight).toBe(one.total);
  });
});
