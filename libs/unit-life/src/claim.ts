import { type Decimal } from '#libs/money';
import { type Answer, no, YES } from './answer.ts';
import { isEndPlace, type UnitPlace } from './unit-places.ts';

export const CLAIM_STATES = ['none', 'owed', 'made', 'answered', 'closed'] as const;

export type ClaimState = (typeof CLAIM_STATES)[number];

export type ClaimAnswer = 'full' | 'short' | 'swapped' | 'refused';
export type ClaimClosing = 'agreed' | 'loss-accepted';

/** What is claimed for a unit: owed to us, or, with a negative open amount, by us. */
export interface Claim {
  readonly state: ClaimState;
  readonly answer: ClaimAnswer | null;
  readonly closing: ClaimClosing | null;
}

export const NO_CLAIM: Claim = { state: 'none', answer: null, closing: null };

/** Asking again after an answer, and starting over when money comes after the close, are moves too. */
export const CLAIM_MOVES: readonly { readonly from: ClaimState; readonly to: ClaimState }[] = [
  { from: 'none', to: 'owed' },
  { from: 'owed', to: 'made' },
  { from: 'owed', to: 'answered' },
  { from: 'made', to: 'answered' },
  { from: 'answered', to: 'made' },
  { from: 'answered', to: 'closed' },
  { from: 'closed', to: 'owed' },
];

/** Where a unit's open amount is money we are to have back; anywhere else it is what the piece costs us. */
export function isAway(place: UnitPlace): boolean {
  return place === 'handed-over' || isEndPlace(place);
}

/** Too much credited, or money open on a unit that is no longer ours. */
function isMoneyToChase(open: Decimal, place: UnitPlace): boolean {
  return open.lessThan(0) || (isAway(place) && !open.isZero());
}

/**
 * Whether a claim may go on to another state. It closes only when there is nothing left to chase.
 *
 * @param claim The claim now
 * @param next The claim asked for
 * @param unit The unit's open amount and place
 * @returns Yes, or why not
 * @example checkClaim(NO_CLAIM, { state: 'closed', answer: null, closing: 'agreed' }, { open: new Decimal(0), place: 'sold' }).ok // false
 */
export function checkClaim(claim: Claim, next: Claim, { open, place }: { readonly open: Decimal; readonly place: UnitPlace }): Answer {
  if (!CLAIM_MOVES.some((move) => move.from === claim.state && move.to === next.state)) {
    return no(`A claim can't go from '${claim.state}' to '${next.state}'.`);
  }
  if (next.state === 'answered' && next.answer === null) return no('Say what the answer was: full, short, swapped or refused.');
  if (next.state !== 'closed') return YES;
  if (next.closing === null) return no('Say how it was closed: agreed, or the loss accepted.');
  if (!isMoneyToChase(open, place)) return YES;
  return no(`${open.toFixed(2)} is still open: enter the credit, or accept the loss, before closing.`);
}

/**
 * The claim after money or place changed, by the tool's own rules: a unit that left us with money open is owed for; a running
 * claim whose money has come is answered in full and closed; money after the end opens it again, in either direction. A unit
 * that comes back to us ends the claim for its money.
 *
 * @param claim The claim before
 * @param open The unit's open amount now
 * @param place Where the unit is now; `from` where it just came from
 * @returns The claim
 * @example claimAfter(NO_CLAIM, new Decimal('31.20'), { place: 'handed-over' }).state // 'owed'
 */
export function claimAfter(claim: Claim, open: Decimal, { place, from }: { readonly place: UnitPlace; readonly from?: UnitPlace }): Claim {
  const isIdle = claim.state === 'none' || claim.state === 'closed';
  if (isIdle) return isMoneyToChase(open, place) ? { state: 'owed', answer: null, closing: null } : claim;
  const isBack = from !== undefined && isAway(from) && !isAway(place);
  if (isBack && !isMoneyToChase(open, place)) return { state: 'closed', answer: claim.answer ?? 'refused', closing: 'agreed' };
  if (open.isZero()) return { state: 'closed', answer: claim.answer ?? 'full', closing: 'agreed' };
  return claim;
}
