import { type ArrivalReason } from './arrival-reasons.ts';
import { type Claim, NO_CLAIM } from './claim.ts';
import { type MoneyEntry } from './money-entry.ts';
import { type UnitPlace } from './unit-places.ts';

/** One saleable, returnable piece; an opened kit stays one unit. */
export interface Unit {
  readonly id: string;
  readonly arrivalReason: ArrivalReason;
  /** The order line it answers or came with. */
  readonly lineId: string | null;
  readonly place: UnitPlace;
  /** The job it is set aside for, fitted in or was taken out of: its cost follows it there. */
  readonly jobId: string | null;
  readonly money: readonly MoneyEntry[];
  readonly claim: Claim;
  readonly moves: readonly MadeMove[];
}

export interface MadeMove {
  readonly from: UnitPlace;
  readonly to: UnitPlace;
  readonly by: string;
  readonly at: string;
}

/**
 * A unit at its beginning: expected when ordered, otherwise set aside as it arrived (taken out when it was in a car).
 *
 * @param id Its id
 * @param arrivalReason Why it exists
 * @param from Its order line and job, where it has them
 * @returns The unit, without money
 * @example newUnit('u1', 'wrong').place // 'set-aside'
 */
export function newUnit(id: string, arrivalReason: ArrivalReason, from: { readonly lineId?: string; readonly jobId?: string } = {}): Unit {
  return {
    id,
    arrivalReason,
    lineId: from.lineId ?? null,
    place: FIRST_PLACE[arrivalReason],
    jobId: from.jobId ?? null,
    money: [],
    claim: NO_CLAIM,
    moves: [],
  };
}

const FIRST_PLACE: Readonly<Record<ArrivalReason, UnitPlace>> = {
  ordered: 'expected',
  substitute: 'set-aside',
  replacement: 'set-aside',
  surplus: 'set-aside',
  wrong: 'set-aside',
  damaged: 'set-aside',
  found: 'set-aside',
  'taken-out': 'taken-out',
};
