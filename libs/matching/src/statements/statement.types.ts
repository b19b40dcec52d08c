import { type DecimalString } from '#libs/money';
import { type DifferenceKind, type UnsureReason } from '../credit-lines/credit-matching.types.ts';
import { type LineKind } from '../lines/line-words.ts';

/** One line of a supplier's statement: the total of a document, with tax. What we owe is positive, what lowers it negative. */
export interface StatementLine {
  readonly id: string;
  /** Number of the document, as the supplier writes it. */
  readonly number?: string | null | undefined;
  readonly text?: string | null | undefined;
  readonly amount: DecimalString;
  /** YYYY-MM-DD. */
  readonly date?: string | null | undefined;
  readonly kind?: LineKind | undefined;
}

/** A document that the statement should speak of. */
export interface StatementDocument {
  readonly id: string;
  /** *expected-credit*: a return that no credit note has come for yet. */
  readonly kind: 'invoice' | 'credit-note' | 'expected-credit' | 'payment';
  /** Every number the supplier may write: its own, our return note, our payment reference. */
  readonly numbers: readonly string[];
  /** With tax, 0 or more. */
  readonly total: DecimalString;
  readonly date?: string | null | undefined;
}

export interface StatementQuestion {
  readonly lines: readonly StatementLine[];
  readonly documents: readonly StatementDocument[];
  /** Amounts this near are the same. Default 0.02. */
  readonly amountTolerance?: DecimalString | undefined;
}

export interface StatementMatch {
  readonly lineId: string;
  readonly documentId: string;
  readonly certainty: 'sure' | 'unsure';
  readonly reasons: readonly UnsureReason[];
  /** Documents that would do as well. */
  readonly alternatives: readonly string[];
}

export interface SecondStatementLine {
  readonly lineId: string;
  readonly documentId: string;
  /** *part*: together not more than the document's total. *twice*: more. */
  readonly proposal: 'part' | 'twice';
}

/** A line that needs no document of ours, and what it is. */
export interface RecognisedStatementLine {
  readonly lineId: string;
  readonly kind: Exclude<LineKind, 'credit'>;
}

export interface StatementDifference {
  readonly kind: Exclude<DifferenceKind, 'restocking-beyond-terms'>;
  readonly lineId?: string;
  readonly documentId?: string;
  /** How much, 0 or more. */
  readonly amount: DecimalString;
  readonly words: string;
}

export interface StatementMatching {
  readonly matches: readonly StatementMatch[];
  readonly secondLines: readonly SecondStatementLine[];
  readonly recognised: readonly RecognisedStatementLine[];
  /** Credits that no document of ours answers to. */
  readonly unknown: readonly string[];
  /** Documents that the statement does not speak of. */
  readonly unmatchedDocuments: readonly string[];
  readonly differences: readonly StatementDifference[];
}
