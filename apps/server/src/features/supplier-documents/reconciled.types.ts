import type { DifferenceKind, LineKind, UnsureReason } from '#libs/matching';

export type DocumentKind = 'invoice' | 'credit-note' | 'statement';
export type MatchSide = 'charge' | 'credit' | 'statement';
export type MatchRole = 'whole' | 'part' | 'twice' | 'same';

/** A line as it is entered; amounts as decimal text. */
export interface EnteredLine {
  id: string;
  position: number;
  number: string;
  reference: string;
  part: string;
  text: string;
  quantity: number;
  amount: string;
  /** YYYY-MM-DD. */
  date: string | null;
}

/** What a line is laid on: a unit, or on a statement a document or a return note without a credit. */
export type Target = { unitId: string } | { namesId: string } | { returnNoteId: string };

export interface FoundMatch {
  lineId: string;
  target: Target;
  side: MatchSide;
  role: MatchRole;
  certainty: 'sure' | 'unsure';
  reasons: readonly UnsureReason[];
  share: string;
  fee: string;
}

export interface FoundDifference {
  kind: DifferenceKind | 'price';
  lineId: string | null;
  target: Target | null;
  amount: string;
  isWithTax: boolean;
  words: string;
}

/** What a paper says of our units and documents, before anything is written. */
export interface Reconciled {
  /** What each recognised line is. */
  kinds: ReadonlyMap<string, LineKind>;
  /** The sure ones, and for a person the unsure ones with what would do as well. */
  matches: readonly FoundMatch[];
  differences: readonly FoundDifference[];
}
