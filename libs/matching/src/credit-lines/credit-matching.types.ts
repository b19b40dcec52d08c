import { type DecimalString } from '#libs/money';
import { type LineKind } from '../lines/line-words.ts';

/** One line of a supplier's credit note. Amounts are net; what the line gives is positive, what it takes is negative. */
export interface CreditLine {
  readonly id: string;
  /** The credit note it stands on; a fee line is shared among the units of its own document. */
  readonly documentId?: string | undefined;
  /** Our return note, order or invoice, as the supplier quotes it. */
  readonly reference?: string | null | undefined;
  readonly part?: string | null | undefined;
  readonly text?: string | null | undefined;
  /** Pieces; a line of quantity n claims n units. */
  readonly quantity: number;
  /** Net of the whole line. */
  readonly net: DecimalString;
  /** YYYY-MM-DD. */
  readonly date?: string | null | undefined;
  /** What the line is, where a person or a column says so; else its words and its part number tell. */
  readonly kind?: LineKind | undefined;
}

/** A unit that money may be due for. */
export interface CreditUnit {
  readonly id: string;
  /** Everything the supplier may quote for it: return note, order, purchase invoice. */
  readonly references: readonly string[];
  /** Its part numbers: ours, the supplier's, the maker's. */
  readonly parts: readonly string[];
  /** What it was charged at, net. */
  readonly charged: DecimalString;
  /** What has been credited for it so far. Default 0. */
  readonly credited?: DecimalString | undefined;
  /** What the supplier may keep by the agreed terms. Default 0. */
  readonly restockingPercent?: DecimalString | undefined;
  /** When it left. A unit that hasn't left can be credited, but isn't missed. */
  readonly handedOverOn?: string | null | undefined;
  /** When the credit is due by the supplier's terms. */
  readonly creditDueOn?: string | null | undefined;
}

export interface CreditMatchingQuestion {
  readonly lines: readonly CreditLine[];
  readonly units: readonly CreditUnit[];
  /** Today, YYYY-MM-DD, to tell which credits are overdue. */
  readonly asOf?: string | undefined;
  /** Amounts this near are the same. Default 0.02. */
  readonly amountTolerance?: DecimalString | undefined;
}

/** Why a match is for a person: another would do as well, there is too little to go by, or something contradicts it. */
export type UnsureReason = 'equal-score' | 'little-evidence' | 'contradiction';

/** One unit with the line that credits it. */
export interface CreditMatch {
  readonly lineId: string;
  readonly unitId: string;
  /** This unit's share of the line's net. */
  readonly share: DecimalString;
  /** Fee lines of the same document that fall on it. */
  readonly fee: DecimalString;
  /** What was still due for it by the terms. */
  readonly expected: DecimalString;
  readonly certainty: 'sure' | 'unsure';
  readonly reasons: readonly UnsureReason[];
  /** Units that would do as well. */
  readonly alternatives: readonly string[];
}

/** A further line on a unit that has one already, or is settled: for a person. */
export interface SecondLine {
  readonly lineId: string;
  readonly unitId: string;
  readonly share: DecimalString;
  /** *part*: together not more than was charged. *twice*: more. */
  readonly proposal: 'part' | 'twice';
}

/** A line that is no credit for a unit, and what it is. */
export interface RecognisedLine {
  readonly lineId: string;
  readonly kind: Exclude<LineKind, 'credit'>;
  readonly net: DecimalString;
  /** Units that a restocking fee was shared among. */
  readonly unitIds: readonly string[];
}

/** Pieces of a line that belong to no unit. */
export interface UnknownLine {
  readonly lineId: string;
  readonly quantity: number;
  readonly net: DecimalString;
}

export type DifferenceKind = 'not-credited' | 'short' | 'over' | 'restocking-beyond-terms' | 'unknown' | 'twice';

export interface CreditDifference {
  readonly kind: DifferenceKind;
  readonly lineId?: string;
  readonly unitId?: string;
  /** How much, 0 or more. */
  readonly amount: DecimalString;
  /** For a credit that has not come: whether it is overdue. */
  readonly isOverdue?: boolean;
  /** For a person, with the figures. */
  readonly words: string;
}

export interface CreditMatching {
  readonly matches: readonly CreditMatch[];
  readonly secondLines: readonly SecondLine[];
  readonly recognised: readonly RecognisedLine[];
  readonly unknown: readonly UnknownLine[];
  /** Units with money due that no line speaks of. */
  readonly unmatchedUnits: readonly string[];
  readonly differences: readonly CreditDifference[];
}
