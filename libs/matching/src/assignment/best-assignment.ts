import { ColumnQueue } from './column-queue.ts';
import { type SparseWeights } from './sparse-weights.ts';

/** Who is matched with whom, and the prices that prove it is best. */
export interface Assignment {
  /** Column of each claim, −1 for none. */
  readonly columnOfClaim: Int32Array;
  /** Claim of each column, −1 for none. */
  readonly claimOfColumn: Int32Array;
  /** Sum of the weights matched. */
  readonly totalWeight: number;
  /** Price of each column, 0 or more, 0 for a free one: no claim gains by paying another column's price. */
  readonly price: Float64Array;
}

const NONE = -1;

/**
 * The matching of greatest total weight between claims and columns, each used at most once; anything may stay unmatched.
 *
 * Shortest augmenting paths over the pairs that exist (Dijkstra with prices), claim by claim; a path may also end by leaving
 * a claim unmatched. Whole-number weights keep every price whole, so equal totals are exactly equal.
 *
 * Source: Kuhn 1955 (the Hungarian method); Jonker and Volgenant, Computing 38, 1987, for the augmentation (from memory).
 * Worst case claims × pairs × log; a free column at the shortest distance ends a search at once, so ties are cheap.
 *
 * @param weights - pairs by row
 * @param rowOfClaim - the row of each claim; several claims may share one
 * @returns the assignment; of several equally good ones any
 * @example
 * const weights = sparseWeights(2, 2, [
 *   { row: 0, column: 0, weight: 9 }, { row: 0, column: 1, weight: 8 }, { row: 1, column: 0, weight: 7 },
 * ]);
 * bestAssignment(weights, Int32Array.of(0, 1)).columnOfClaim; // Int32Array [1, 0]: 15 beats 9
 */
export function bestAssignment(weights: SparseWeights, rowOfClaim: Int32Array): Assignment {
  const search = new Search(weights, rowOfClaim);
  for (let claim = 0; claim < rowOfClaim.length; claim += 1) search.augment(claim);
  return search.result();
}

class Search {
  private readonly columnOfClaim: Int32Array;
  private readonly weightOfClaim: Float64Array;
  private readonly claimOfColumn: Int32Array;
  private readonly price: Float64Array;
  private readonly distance: Float64Array;
  private readonly reachedFrom: Int32Array;
  private readonly reachedWeight: Int32Array;
  private readonly isDone: Uint8Array;
  private readonly touched: number[] = [];
  private readonly settled: number[] = [];
  private readonly queue = new ColumnQueue();
  private endDistance = 0;
  private endClaim = NONE;
  private endColumn = NONE;

  constructor(
    private readonly weights: SparseWeights,
    private readonly rowOfClaim: Int32Array,
  ) {
    const { columnCount } = weights;
    this.columnOfClaim = new Int32Array(rowOfClaim.length).fill(NONE);
    this.weightOfClaim = new Float64Array(rowOfClaim.length);
    this.claimOfColumn = new Int32Array(columnCount).fill(NONE);
    this.price = new Float64Array(columnCount);
    this.distance = new Float64Array(columnCount).fill(Number.POSITIVE_INFINITY);
    this.reachedFrom = new Int32Array(columnCount).fill(NONE);
    this.reachedWeight = new Int32Array(columnCount);
    this.isDone = new Uint8Array(columnCount);
  }

  /** Brings one more claim in, by the change of matching that loses least. */
  augment(claim: number): void {
    this.endDistance = Number.POSITIVE_INFINITY;
    this.reach(claim, 0, this.bestGain(claim));
    while (this.queue.nearest < this.endDistance) {
      const column = this.queue.pop();
      if (this.isDone[column] === 1) continue;
      this.isDone[column] = 1;
      this.settled.push(column);
      const holder = this.claimOfColumn[column] ?? NONE;
      const gain = (this.weightOfClaim[holder] ?? 0) - (this.price[column] ?? 0);
      this.reach(holder, this.distance[column] ?? 0, gain);
    }
    this.raisePrices();
    this.flip();
    this.forget();
  }

  result(): Assignment {
    const totalWeight = this.weightOfClaim.reduce((sum, weight) => sum + weight, 0);
    return { columnOfClaim: this.columnOfClaim, claimOfColumn: this.claimOfColumn, totalWeight, price: this.price };
  }

  /** The most that a claim can gain at present prices; 0 is to stay unmatched. */
  private bestGain(claim: number): number {
    const { start, column, weight } = this.weights;
    const row = this.rowOfClaim[claim] ?? 0;
    let best = 0;
    for (let pair = start[row] ?? 0; pair < (start[row + 1] ?? 0); pair += 1) {
      best = Math.max(best, (weight[pair] ?? 0) - (this.price[column[pair] ?? 0] ?? 0));
    }
    return best;
  }

  /** Looks from a claim at `base` distance, whose gain is known, for columns that are now nearer. */
  private reach(claim: number, base: number, gain: number): void {
    const { start, column, weight } = this.weights;
    if (base + gain < this.endDistance) this.endAt(base + gain, claim, NONE);
    const row = this.rowOfClaim[claim] ?? 0;
    for (let pair = start[row] ?? 0; pair < (start[row + 1] ?? 0); pair += 1) {
      const target = column[pair] ?? 0;
      const value = weight[pair] ?? 0;
      const distance = base + gain - value + (this.price[target] ?? 0);
      if (distance >= (this.distance[target] ?? 0) || distance >= this.endDistance || this.isDone[target] === 1) continue;
      if (this.distance[target] === Number.POSITIVE_INFINITY) this.touched.push(target);
      this.distance[target] = distance;
      this.reachedFrom[target] = claim;
      this.reachedWeight[target] = value;
      if (this.claimOfColumn[target] === NONE) this.endAt(distance, NONE, target);
      else this.queue.push(target, distance);
    }
  }

  private endAt(distance: number, claim: number, column: number): void {
    this.endDistance = distance;
    this.endClaim = claim;
    this.endColumn = column;
  }

  private raisePrices(): void {
    for (const column of this.settled) {
      this.price[column] = (this.price[column] ?? 0) + this.endDistance - (this.distance[column] ?? 0);
    }
  }

  /** Hands columns on along the path found, from its end back to the claim that came in. */
  private flip(): void {
    let column = this.endColumn;
    if (this.endClaim !== NONE) {
      column = this.columnOfClaim[this.endClaim] ?? NONE;
      this.columnOfClaim[this.endClaim] = NONE;
      this.weightOfClaim[this.endClaim] = 0;
    }
    while (column !== NONE) {
      const claim = this.reachedFrom[column] ?? NONE;
      const handedOn = this.columnOfClaim[claim] ?? NONE;
      this.columnOfClaim[claim] = column;
      this.claimOfColumn[column] = claim;
      this.weightOfClaim[claim] = this.reachedWeight[column] ?? 0;
      column = handedOn;
    }
  }

  private forget(): void {
    for (const column of this.touched) {
      this.distance[column] = Number.POSITIVE_INFINITY;
      this.isDone[column] = 0;
    }
    this.touched.length = 0;
    this.settled.length = 0;
    this.queue.clear();
  }
}
