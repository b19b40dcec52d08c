import { type DecimalString } from '#libs/money';
import { assignRows } from '../candidates/assign-rows.ts';
import { findCandidates, type KnownNumbers } from '../candidates/find-candidates.ts';
import { type CandidatePairs, type Evidence } from '../candidates/evidence.types.ts';
import { CREDIT_DATE_DAYS, creditPoints } from './credit-points.ts';
import { type CreditLine, type CreditUnit } from './credit-matching.types.ts';
import { lineEvidence } from './credit-evidence.ts';

/** What is left of a line: its pieces and their shares of its net. */
export interface OpenLine {
  readonly line: CreditLine;
  readonly shares: readonly DecimalString[];
}

/** A unit that may be claimed, and how it is found. */
export interface ClaimableUnit {
  readonly unit: CreditUnit;
  readonly evidence: Evidence;
}

/** One piece of a line laid on a unit. */
export interface UnitClaim {
  readonly line: CreditLine;
  readonly unit: CreditUnit;
  readonly share: DecimalString;
  readonly agreement: number;
  readonly isOnlyBest: boolean;
  readonly alternatives: readonly string[];
}

export interface ClaimedUnits {
  readonly claims: readonly UnitClaim[];
  /** Lines with pieces that found no unit. */
  readonly left: readonly OpenLine[];
}

export interface ClaimContext {
  /** Numbers that exist. */
  readonly known: KnownNumbers;
  readonly toleranceHundredths: number;
  /** Whether a reference or part number has to agree exactly. */
  readonly exactOnly: boolean;
}

/**
 * Lays lines on units by the best assignment overall, at most one line on a unit.
 *
 * @param open - lines with pieces left
 * @param units - units to be claimed
 * @param context - numbers that exist, tolerance, and how exact the evidence has to be
 */
export function claimUnits(open: readonly OpenLine[], units: readonly ClaimableUnit[], context: ClaimContext): ClaimedUnits {
  const pairs = creditPairs(open, units, context);
  const matches = assignRows(pairs, { quantity: open.map(({ shares }) => shares.length), copyKey: open.map(({ line }) => copyKey(line)) });
  const used = new Map<number, number>();
  const claims = matches.flatMap(({ row, column, agreement, isOnlyBest, otherColumns }): UnitClaim[] => {
    const target = units[column];
    const from = open[row];
    const piece = used.get(row) ?? 0;
    used.set(row, piece + 1);
    const share = from?.shares[piece];
    if (target === undefined || from === undefined || share === undefined) return [];
    const alternatives = otherColumns.flatMap((other) => units[other]?.unit.id ?? []);
    return [{ line: from.line, unit: target.unit, share, agreement, isOnlyBest, alternatives }];
  });
  const left = open
    .map(({ line, shares }, row) => ({ line, shares: shares.slice(used.get(row) ?? 0) }))
    .filter(({ shares }) => shares.length > 0);
  return { claims, left };
}

/**
 * The pairs of lines and units that may belong together.
 *
 * @param open - lines with pieces left
 * @param units - units to be claimed
 * @param context - as for {@link claimUnits}
 */
export function creditPairs(open: readonly OpenLine[], units: readonly ClaimableUnit[], context: ClaimContext): CandidatePairs {
  const rows = open.map(({ line }) => lineEvidence(line, context.known));
  const columns = units.map(({ evidence }) => evidence);
  const tolerances = { hundredths: context.toleranceHundredths, days: CREDIT_DATE_DAYS };
  return findCandidates(rows, columns, {
    points: creditPoints,
    tolerances,
    known: context.known,
    amountAlone: false,
    exactOnly: context.exactOnly,
  });
}

/** Lines that are copies of each other: nothing changes when they change places. */
function copyKey({ documentId, reference, part, text, quantity, net, date }: CreditLine): string {
  return JSON.stringify([documentId, reference, part, text, quantity, net, date]);
}
