import { AGREES, type ScorePoints } from '../candidates/evidence.types.ts';
import { type UnsureReason } from '../credit-lines/credit-matching.types.ts';

/** Points for a statement line and a document (common practice, no source). An amount needs the kind or the date beside it. */
export const statementPoints: ScorePoints = {
  reference: 400,
  referenceNear: 250,
  referenceConflict: 50,
  part: 0,
  partNear: 0,
  partConflict: 0,
  amount: 250,
  amountNear: 100,
  date: 100,
  kind: 150,
  kindConflict: 500,
  least: 299,
};

/** After two months a date says nothing any more about which document a line is. */
export const STATEMENT_DATE_DAYS = 60;

/**
 * Why a statement match is for a person; nothing for a sure one. Sure needs the number, with the amount or the kind beside it,
 * and no other match to be as good.
 *
 * @param agreement - bits of the pair
 * @param isOnlyBest - whether the assignment has no equal
 */
export function unsureStatementReasons(agreement: number, isOnlyBest: boolean): UnsureReason[] {
  const hasNumber = (agreement & AGREES.reference) !== 0;
  const isBacked = (agreement & (AGREES.amount | AGREES.kind)) !== 0;
  return [
    ...(isOnlyBest ? [] : ['equal-score' as const]),
    ...(hasNumber && isBacked ? [] : ['little-evidence' as const]),
    ...((agreement & AGREES.conflict) === 0 ? [] : ['contradiction' as const]),
  ];
}
