import { type Assignment } from './best-assignment.ts';
import { type SparseWeights } from './sparse-weights.ts';
import { strongComponents } from './strong-components.ts';

const NONE = -1;
const UNKNOWN = -1;

/** Whether a claim's match is the only best one, and which other columns the claim could have had without loss. */
export interface Certainty {
  readonly isOnlyBest: boolean;
  readonly otherColumns: readonly number[];
}

/**
 * Finds the matches that are not the only best ones: where another matching of the same total weight gives the column to
 * somebody else, or to nobody.
 *
 * A pair can be changed without loss exactly when it lies on a cycle of pairs whose weight equals gain plus price. Claims of
 * one class (the claims on one line, or copies of one line) count as one node: changing places among themselves changes
 * nothing.
 *
 * Source: complementary slackness of the assignment problem; the edges common to all optimal matchings (from memory).
 *
 * @param weights - pairs by row
 * @param assignment - a best one, with its prices
 * @param claims - the row and the class of each claim, classes numbered from 0
 */
export function interchangeablePairs(
  weights: SparseWeights,
  assignment: Assignment,
  claims: { readonly row: Int32Array; readonly classOf: Int32Array },
): Certainty[] {
  const graph = tightGraph(weights, assignment, claims);
  const component = strongComponents(graph.arcs.length, graph.arcs);
  return Array.from(assignment.columnOfClaim, (column, claim) => {
    const own = claims.classOf[claim] ?? 0;
    const isMovable = column !== NONE && component[graph.classCount + column] === component[own];
    if (!isMovable) return { isOnlyBest: true, otherColumns: [] };
    const others = (graph.arcs[own] ?? []).filter((node) => node !== graph.outside && component[node] === component[own]);
    return { isOnlyBest: false, otherColumns: others.map((node) => node - graph.classCount) };
  });
}

interface TightGraph {
  readonly classCount: number;
  /** Node that stands for not being matched. */
  readonly outside: number;
  readonly arcs: number[][];
}

function tightGraph(
  weights: SparseWeights,
  { columnOfClaim, claimOfColumn, price }: Assignment,
  { row, classOf }: { readonly row: Int32Array; readonly classOf: Int32Array },
): TightGraph {
  const classCount = classOf.reduce((most, each) => Math.max(most, each + 1), 0);
  const outside = classCount + weights.columnCount;
  const arcs = Array.from({ length: outside + 1 }, (): number[] => []);
  const gains = new Float64Array(classCount).fill(UNKNOWN);
  const priceOf = (column: number): number => price[column] ?? 0;
  for (const [claim, column] of columnOfClaim.entries()) {
    const own = classOf[claim] ?? 0;
    const isSeen = gains[own] !== UNKNOWN;
    if (!isSeen) gains[own] = gainOf(weights, { row: row[claim] ?? 0, price });
    const gain = gains[own] ?? 0;
    if (column === NONE) arcs[outside]?.push(own);
    else {
      arcs[classCount + column]?.push(own);
      if (gain === 0) arcs[own]?.push(outside);
    }
    if (isSeen) continue;
    forEachPair(weights, row[claim] ?? 0, (target, weight) => {
      const holder = claimOfColumn[target] ?? NONE;
      const isOwn = holder !== NONE && classOf[holder] === own;
      if (!isOwn && weight - priceOf(target) === gain) arcs[own]?.push(classCount + target);
    });
  }
  for (const [column, claim] of claimOfColumn.entries()) {
    if (claim === NONE) arcs[classCount + column]?.push(outside);
    else if (priceOf(column) === 0) arcs[outside]?.push(classCount + column);
  }
  return { classCount, outside, arcs };
}

function gainOf(weights: SparseWeights, { row, price }: { readonly row: number; readonly price: Float64Array }): number {
  let best = 0;
  forEachPair(weights, row, (column, weight) => {
    best = Math.max(best, weight - (price[column] ?? 0));
  });
  return best;
}

function forEachPair({ start, column, weight }: SparseWeights, row: number, visit: (column: number, weight: number) => void): void {
  for (let pair = start[row] ?? 0; pair < (start[row + 1] ?? 0); pair += 1) visit(column[pair] ?? 0, weight[pair] ?? 0);
}
