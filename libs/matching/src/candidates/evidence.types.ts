import { type SparseWeights } from '../assignment/sparse-weights.ts';

/** What two sides of a match are compared by; both sides in the same form. */
export interface Evidence {
  /** Normalised; empty when there is none. */
  readonly references: readonly string[];
  readonly parts: readonly string[];
  /** Amount in hundredths, for comparing only: money is computed in decimals elsewhere. */
  readonly hundredths: number;
  /** Days since 1970. */
  readonly day: number | null;
  /** Sides of different kinds don't belong together; null is unknown. */
  readonly kind: string | null;
}

/** Points for what agrees. All whole numbers. */
export interface ScorePoints {
  readonly reference: number;
  /** One slip apart. */
  readonly referenceNear: number;
  /** Taken off where both sides have references and none is alike. */
  readonly referenceConflict: number;
  readonly part: number;
  readonly partNear: number;
  readonly partConflict: number;
  readonly amount: number;
  /** At most, for an amount that is near; nothing from half as much off. */
  readonly amountNear: number;
  readonly date: number;
  readonly kind: number;
  readonly kindConflict: number;
  /** Fewer points are no match at all. What counts in the assignment is the points above it. */
  readonly least: number;
}

/** What counts as agreeing. */
export interface MatchTolerances {
  /** Amounts this near are the same, in hundredths. */
  readonly hundredths: number;
  /** Days after which the date says nothing any more. */
  readonly days: number;
}

/** Bits of a pair's agreement. */
export const AGREES = { reference: 1, referenceNear: 2, part: 4, partNear: 8, amount: 16, conflict: 32, kind: 64 } as const;

/** Pairs that may belong together: rows against columns, with points and agreements, in the order of the weights. */
export interface CandidatePairs {
  readonly weights: SparseWeights;
  readonly agreement: Uint8Array;
}
