import { type Unit } from './unit.ts';
import { type UnitPlace } from './unit-places.ts';

const UNDECIDED: readonly UnitPlace[] = ['expected', 'set-aside', 'to-return', 'handed-over', 'taken-out'];

/**
 * The units that keep a job from being squared: still on their way, undecided or going back, or with a claim that runs.
 *
 * @param units The job's units
 * @returns Those that are owed something, or owe
 * @example unitDebts([newUnit('u1', 'surplus')]).length // 1
 */
export function unitDebts<U extends Pick<Unit, 'place' | 'claim'>>(units: readonly U[]): readonly U[] {
  return units.filter(({ place, claim }) => UNDECIDED.includes(place) || (claim.state !== 'none' && claim.state !== 'closed'));
}
