import { type Day, dueToReturn, type ReturnCandidate } from '#libs/unit-life';
import type { Unit } from './units.repository.ts';

const dayOf = (column: Date): Day => column.toISOString().slice(0, 10);

export function toCandidate({ place, arrivalReason, isOpened, returnBy, variant }: Unit): ReturnCandidate {
  return { place, arrivalReason, isOpened, lastReturnOn: returnBy && dayOf(returnBy), terms: variant.supplier };
}

/** Why its supplier will not take back a piece that lies here, in words; null where it will. */
export function backAgainst(unit: Unit, today: Day): string | null {
  if (unit.place !== 'set-aside' && unit.place !== 'to-return') return null;
  const isOurs = unit.arrivalReason !== 'wrong' && unit.arrivalReason !== 'damaged';
  if (isOurs && unit.variant.supplier.returnDays === 0) return `${unit.variant.supplier.name} takes nothing back.`;
  return dueToReturn(toCandidate(unit), { today, leadDays: 0, isProofPassed: false }).against;
}
