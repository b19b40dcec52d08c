import { type DecimalString } from '#libs/money';
import { type DraftLine } from '../document/invoice-line.ts';

/** A line before it has its number in the draft. */
export type UnnumberedLine = Omit<DraftLine, 'id'>;

/** Something on the job that is deliberately not billed, and why. */
export interface NotBilled {
  readonly packageId: string;
  readonly what: string;
  readonly why: string;
}

/** A package whose lines stay out of the draft until somebody acts. */
export interface HeldPackage {
  readonly packageId: string;
  readonly name: string;
  readonly reason: 'no-answer' | 'refused' | 'above-its-ceiling' | 'above-job-ceiling';
  /** What happened and what to do. */
  readonly words: string;
  readonly taxExclusive: DecimalString;
  readonly taxInclusive: DecimalString;
  /** The lines as they would be billed. */
  readonly lines: readonly DraftLine[];
}

export interface DraftedWork {
  readonly lines: readonly DraftLine[];
  readonly held: readonly HeldPackage[];
  readonly notBilled: readonly NotBilled[];
  /** Sum of the lines with tax, to stand beside the ceiling. */
  readonly taxInclusive: DecimalString;
  readonly ceiling: DecimalString | null;
}
