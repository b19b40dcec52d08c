import { type ArrivalReason } from './arrival-reasons.ts';
import { type Day, daysBetween } from './calendar-days.ts';
import { type SupplierTerms } from './supplier-terms.ts';
import { type UnitPlace } from './unit-places.ts';

export interface ReturnCandidate {
  readonly place: UnitPlace;
  readonly arrivalReason: ArrivalReason;
  readonly isOpened: boolean;
  /** Null while the supplier's window has not begun to run. */
  readonly lastReturnOn: Day | null;
  readonly terms: Pick<SupplierTerms, 'unopenedOnly'>;
}

export interface ReturnContext {
  readonly today: Day;
  /** So many days before its last date a set-aside unit has to be on the shelf to go. */
  readonly leadDays: number;
  /** The job has chosen another variant and its run-hot proof has passed. */
  readonly isProofPassed: boolean;
}

export interface ReturnDue {
  readonly due: boolean;
  readonly why: 'proof-passed' | 'date-near' | 'date-passed' | 'wrong-or-damaged' | 'not-yet' | 'not-here';
  /** Days left until the last date, negative when it has passed; null when there is none. */
  readonly daysLeft: number | null;
  /** What stands against its going back, in words. */
  readonly against: string | null;
}

/**
 * Whether a unit that lies here should go back now: when the repair is proved with another one, or some days before its last date.
 *
 * @param unit The unit, its last date and its supplier's terms
 * @param context Today, the lead time, whether the repair is proved
 * @returns Whether it is due, why, and what stands against it
 * @throws RangeError when a date is none
 * @example dueToReturn({ place: 'set-aside', arrivalReason: 'ordered', isOpened: false, lastReturnOn: '2026-06-12', terms: { unopenedOnly: true } },
 *   { today: '2026-06-09', leadDays: 5, isProofPassed: false }) // { due: true, why: 'date-near', daysLeft: 3, against: null }
 */
export function dueToReturn(unit: ReturnCandidate, context: ReturnContext): ReturnDue {
  const daysLeft = unit.lastReturnOn === null ? null : daysBetween(context.today, unit.lastReturnOn);
  const why = reasonFor(unit, context, daysLeft);
  return { due: why !== 'not-yet' && why !== 'not-here', why, daysLeft, against: objection(unit, daysLeft) };
}

function reasonFor(unit: ReturnCandidate, { leadDays, isProofPassed }: ReturnContext, daysLeft: number | null): ReturnDue['why'] {
  if (unit.place !== 'set-aside' && unit.place !== 'to-return') return 'not-here';
  if (unit.arrivalReason === 'wrong' || unit.arrivalReason === 'damaged') return 'wrong-or-damaged';
  if (daysLeft !== null && daysLeft < 0) return 'date-passed';
  if (isProofPassed) return 'proof-passed';
  return daysLeft !== null && daysLeft <= leadDays ? 'date-near' : 'not-yet';
}

/** A wrong or damaged piece goes back whatever the terms for surplus say. */
function objection(unit: ReturnCandidate, daysLeft: number | null): string | null {
  if (unit.arrivalReason === 'wrong' || unit.arrivalReason === 'damaged') return null;
  if (unit.terms.unopenedOnly && unit.isOpened) return 'It has been opened, and this supplier takes back unopened ones only.';
  if (daysLeft !== null && daysLeft < 0) return `Its last date passed ${-daysLeft} days ago: ask the supplier, or keep it as stock.`;
  return null;
}
