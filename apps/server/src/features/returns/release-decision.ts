import { type Day, dueToReturn } from '#libs/unit-life';
import { backAgainst, toCandidate } from './return-candidate.ts';
import type { Unit } from './units.repository.ts';

export interface ReleaseFacts {
  /** The variant that was chosen for the job. */
  variantId: string;
  /** The card says that it is in the car. */
  isFitted: boolean;
  /** The card's proof has passed. */
  isProofPassed: boolean;
  /** Pieces that a person took off the way back: they stay. */
  keptIds: ReadonlySet<string>;
  today: Day;
  leadDays: number;
}

export interface Decision {
  unit: Unit;
  to: 'fitted' | 'to-return';
  why: string;
}

const WHY: Readonly<Record<string, string>> = {
  'proof-passed': 'Not needed: the proof has passed',
  'date-near': 'Not needed: its last day comes near',
  'wrong-or-damaged': 'Wrong or damaged',
};

/**
 * What becomes of a job's pieces by itself once its variant is chosen: the chosen one is fitted when the card says so, the others
 * go back when the proof has passed or their last day comes near. What can't go back stays where it is, for a person.
 */
export function releaseDecision(units: readonly Unit[], { variantId, isFitted, keptIds, ...context }: ReleaseFacts): Decision[] {
  const aside = units.filter(({ place }) => place === 'set-aside');
  const isInTheCar = units.some(({ place, variant }) => place === 'fitted' && variant.id === variantId);
  const chosen = isInTheCar ? undefined : aside.find(({ variant }) => variant.id === variantId);
  const decisions: Decision[] = chosen && isFitted ? [{ unit: chosen, to: 'fitted', why: 'Fitted, says the card' }] : [];
  for (const unit of aside) {
    if (unit === chosen || keptIds.has(unit.id)) continue;
    const { due, why } = dueToReturn(toCandidate(unit), context);
    if (due && backAgainst(unit, context.today) === null) decisions.push({ unit, to: 'to-return', why: WHY[why] ?? why });
  }
  return decisions;
}
