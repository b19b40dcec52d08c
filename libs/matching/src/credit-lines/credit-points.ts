import { AGREES, type ScorePoints } from '../candidates/evidence.types.ts';
import { type UnsureReason } from './credit-matching.types.ts';

/** Points for a credit-note line and a unit (common practice, no source). */
export const creditPoints: ScorePoints = {
  reference: 400,
  referenceNear: 250,
  referenceConflict: 50,
  part: 300,
  partNear: 150,
  partConflict: 250,
  amount: 200,
  amountNear: 150,
  date: 100,
  kind: 0,
  kindConflict: 0,
  least: 120,
};

/** After four months a date says nothing any more about which return a credit belongs to. */
export const CREDIT_DATE_DAYS = 120;

/**
 * Why a credit match is for a person; nothing for a sure one. Sure needs two of reference, part number and amount to agree
 * exactly, nothing to contradict, and no other match to be as good.
 *
 * @param agreement - bits of the pair
 * @param isOnlyBest - whether the assignment has no equal
 * @example unsureReasons(AGREES.reference | AGREES.part, true) // []
 */
export function unsureReasons(agreement: number, isOnlyBest: boolean): UnsureReason[] {
  const agreeing = [AGREES.reference, AGREES.part, AGREES.amount].filter((bit) => (agreement & bit) !== 0).length;
  return [
    ...(isOnlyBest ? [] : ['equal-score' as const]),
    ...(agreeing >= 2 ? [] : ['little-evidence' as const]),
    ...((agreement & AGREES.conflict) === 0 ? [] : ['contradiction' as const]),
  ];
}
