import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import munkres from 'munkres-js';
import { bestAssignment } from './best-assignment.ts';
import { interchangeablePairs } from './interchangeable-pairs.ts';
import { sparseWeights } from './sparse-weights.ts';
import { strongComponents } from './strong-components.ts';

type Table = readonly (readonly number[])[];

/** Every matching of rows to columns or to nothing, with its weight. */
function* everyMatching(table: Table, row = 0, used: readonly number[] = []): Generator<{ columns: number[]; total: number }> {
  const weights = table[row];
  if (weights === undefined) {
    yield { columns: [], total: 0 };
    return;
  }
  for (const column of [-1, ...weights.keys()]) {
    const weight = column < 0 ? 0 : (weights[column] ?? 0);
    if (column >= 0 && (weight === 0 || used.includes(column))) continue;
    for (const rest of everyMatching(table, row + 1, [...used, column])) {
      yield { columns: [column, ...rest.columns], total: weight + rest.total };
    }
  }
}

const solve = (table: Table, columnCount: number) => {
  const pairs = table.flatMap((weights, row) => weights.flatMap((weight, column) => (weight > 0 ? [{ row, column, weight }] : [])));
  const weights = sparseWeights(table.length, columnCount, pairs);
  const rows = Int32Array.from(table.keys());
  return { weights, rows, assignment: bestAssignment(weights, rows) };
};

const tableOf = (most: number, weight: fc.Arbitrary<number>): fc.Arbitrary<Table> =>
  fc
    .tuple(fc.integer({ min: 1, max: most }), fc.integer({ min: 1, max: most }))
    .chain(([rows, columns]) =>
      fc.array(fc.array(weight, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
    );

const sparse = fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 1000 }));

describe('bestAssignment', () => {
  it('gives the example its better total: 8 + 7 beats 9', () => {
    const { assignment } = solve(
      [
        [9, 8],
        [7, 0],
      ],
      2,
    );
    expect([...assignment.columnOfClaim]).toEqual([1, 0]);
    expect(assignment.totalWeight).toBe(15);
  });

  it('leaves unmatched what would cost more than it brings', () => {
    const { assignment } = solve([[5], [9]], 1);
    expect([...assignment.columnOfClaim]).toEqual([-1, 0]);
  });

  it.each([2, 3, 4, 5])('agrees with trying everything, up to %p rows and columns', (most) => {
    fc.assert(
      fc.property(tableOf(most, sparse), (table) => {
        const { assignment } = solve(table, table[0]?.length ?? 0);
        const best = Math.max(...[...everyMatching(table)].map(({ total }) => total));
        expect(assignment.totalWeight).toBe(best);
        const used = [...assignment.columnOfClaim].filter((column) => column >= 0);
        expect(new Set(used).size).toBe(used.length);
        expect(used.reduce((sum, column) => sum + (table[assignment.claimOfColumn[column] ?? -1]?.[column] ?? 0), 0)).toBe(best);
      }),
    );
  });

  it('agrees with trying everything at 6 and at 7 by 7', () => {
    const full = (size: number) => fc.array(fc.array(sparse, { minLength: size, maxLength: size }), { minLength: size, maxLength: size });
    for (const [size, numRuns] of [
      [6, 12],
      [7, 4],
    ] as const) {
      fc.assert(
        fc.property(full(size), (table) => {
          let best = 0;
          for (const { total } of everyMatching(table)) best = Math.max(best, total);
          expect(solve(table, size).assignment.totalWeight).toBe(best);
        }),
        { numRuns, interruptAfterTimeLimit: 20_000 },
      );
    }
  });

  // An independent solver from the registry (munkres-js 1.2.2), which seeks the least cost of a square table and matches every row.
  it('agrees with the Hungarian algorithm of another library at sizes that nobody can try through', () => {
    fc.assert(
      fc.property(tableOf(25, sparse), (table) => {
        const columns = table[0]?.length ?? 0;
        const size = Math.max(table.length, columns);
        const costs = Array.from({ length: size }, (_, row) => Array.from({ length: size }, (__, column) => -(table[row]?.[column] ?? 0)));
        const total = munkres(costs).reduce((sum, [row, column]) => sum + (table[row]?.[column] ?? 0), 0);
        expect(solve(table, columns).assignment.totalWeight).toBe(total);
      }),
    );
  });

  it('proves itself at any size: gains and prices add up to the total, and no pair is worth more than its two', () => {
    fc.assert(
      fc.property(tableOf(25, sparse), (table) => {
        const { assignment } = solve(table, table[0]?.length ?? 0);
        const gains = table.map((weights) =>
          weights.reduce((best, weight, column) => Math.max(best, weight > 0 ? weight - (assignment.price[column] ?? 0) : 0), 0),
        );
        const bound = gains.reduce((sum, gain) => sum + gain, 0) + assignment.price.reduce((sum, price) => sum + price, 0);
        expect(Math.min(...assignment.price)).toBeGreaterThanOrEqual(0);
        expect(assignment.totalWeight).toBe(bound);
      }),
      { numRuns: 200 },
    );
  });

  it('lets several claims share one row', () => {
    const weights = sparseWeights(1, 3, [
      { row: 0, column: 0, weight: 5 },
      { row: 0, column: 2, weight: 4 },
    ]);
    const { columnOfClaim, totalWeight } = bestAssignment(weights, Int32Array.of(0, 0, 0));
    expect([...columnOfClaim].sort()).toEqual([-1, 0, 2]);
    expect(totalWeight).toBe(9);
  });
});

describe('interchangeablePairs', () => {
  it('finds exactly the matches that another best matching does without', () => {
    fc.assert(
      fc.property(tableOf(5, fc.integer({ min: 0, max: 3 })), (table) => {
        const { weights, rows, assignment } = solve(table, table[0]?.length ?? 0);
        const certainties = interchangeablePairs(weights, assignment, { row: rows, classOf: rows });
        const all = [...everyMatching(table)];
        const best = Math.max(...all.map(({ total }) => total));
        const bests = all.filter(({ total }) => total === best);
        for (const [row, column] of assignment.columnOfClaim.entries()) {
          if (column < 0) continue;
          const isOnly = bests.every(({ columns }) => columns[row] === column);
          expect(certainties[row]?.isOnlyBest).toBe(isOnly);
          const others = new Set(bests.map(({ columns }) => columns[row] ?? -1).filter((other) => other >= 0 && other !== column));
          expect([...(certainties[row]?.otherColumns ?? [])].sort()).toEqual([...others].sort());
        }
      }),
      { numRuns: 300 },
    );
  });

  it('does not mind claims of one class changing places', () => {
    const weights = sparseWeights(1, 2, [
      { row: 0, column: 0, weight: 5 },
      { row: 0, column: 1, weight: 5 },
    ]);
    const row = Int32Array.of(0, 0);
    const certainties = interchangeablePairs(weights, bestAssignment(weights, row), { row, classOf: row });
    expect(certainties.every(({ isOnlyBest }) => isOnlyBest)).toBe(true);
  });
});

describe('strongComponents', () => {
  it('agrees with reachability both ways', () => {
    const graph = fc
      .integer({ min: 1, max: 8 })
      .chain((size) => fc.array(fc.array(fc.nat(size - 1), { maxLength: 4 }), { minLength: size, maxLength: size }));
    fc.assert(
      fc.property(graph, (arcs) => {
        const component = strongComponents(arcs.length, arcs);
        const reaches = (from: number, to: number): boolean => {
          const seen = new Set([from]);
          for (const node of seen) for (const next of arcs[node] ?? []) seen.add(next);
          return seen.has(to);
        };
        for (const a of arcs.keys()) {
          for (const b of arcs.keys()) expect(component[a] === component[b]).toBe(reaches(a, b) && reaches(b, a));
        }
      }),
    );
  });
});
