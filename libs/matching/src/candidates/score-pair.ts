import { AGREES, type Evidence, type MatchTolerances, type ScorePoints } from './evidence.types.ts';

/** Beyond half as much off, an amount says nothing. */
const AMOUNT_REACH = 0.5;

/**
 * Points for one pair whose references and parts have been looked up already. Additive points for agreement and against
 * disagreement, after the pattern of record linkage (Fellegi and Sunter, J. Am. Stat. Assoc. 64, 1969, from memory); the
 * points themselves are common practice, no source.
 *
 * @param row - one side
 * @param column - the other
 * @param context - agreement bits found so far, points and tolerances
 * @returns points and the agreement with amount, kind and conflict added
 */
export function scorePair(
  row: Evidence,
  column: Evidence,
  context: { readonly found: number; readonly points: ScorePoints; readonly tolerances: MatchTolerances },
): { readonly score: number; readonly agreement: number } {
  const { found, points, tolerances } = context;
  let agreement = found;
  let score = 0;
  if ((found & AGREES.reference) !== 0) score += points.reference;
  else if ((found & AGREES.referenceNear) !== 0) score += points.referenceNear;
  else if (row.references.length > 0 && column.references.length > 0) score -= points.referenceConflict;
  if ((found & AGREES.part) !== 0) score += points.part;
  else if ((found & AGREES.partNear) !== 0) score += points.partNear;
  else if (row.parts.length > 0 && column.parts.length > 0) {
    score -= points.partConflict;
    agreement |= AGREES.conflict;
  }
  const off = Math.abs(row.hundredths - column.hundredths);
  if (off <= tolerances.hundredths) {
    score += points.amount;
    agreement |= AGREES.amount;
  } else {
    const share = off / Math.max(row.hundredths, column.hundredths, 1);
    score += Math.max(0, Math.floor(points.amountNear * (1 - share / AMOUNT_REACH)));
  }
  if (row.day !== null && column.day !== null) {
    score += Math.max(0, Math.floor(points.date * (1 - Math.abs(row.day - column.day) / tolerances.days)));
  }
  if (row.kind !== null && column.kind !== null) {
    if (row.kind === column.kind) {
      score += points.kind;
      agreement |= AGREES.kind;
    } else {
      score -= points.kindConflict;
      agreement |= AGREES.conflict;
    }
  }
  return { score, agreement };
}
