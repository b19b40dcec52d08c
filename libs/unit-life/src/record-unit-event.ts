import { checkClaim, type Claim, claimAfter } from './claim.ts';
import { checkMoneyEntry, type MoneyEntry } from './money-entry.ts';
import { openAmount } from './open-amount.ts';
import { checkMove, type MoveRequest, type MoveRules } from './check-move.ts';
import { type Unit } from './unit.ts';
import { type UnitPlace } from './unit-places.ts';

export type UnitEvent =
  | { readonly kind: 'move'; readonly move: MoveRequest }
  | { readonly kind: 'money'; readonly entry: MoneyEntry }
  | { readonly kind: 'claim'; readonly claim: Claim };

export type Recorded = { readonly ok: true; readonly unit: Unit } | { readonly ok: false; readonly why: string };

/**
 * A unit after an event, or why it can't be recorded. Money that arrives is always taken in, wherever the unit is; when it
 * leaves something open at an end place, or makes us owe, a claim opens by itself.
 *
 * @param unit The unit
 * @param event A move, an entry in its account, or a step of its claim
 * @param rules The workshop's limit for writing off
 * @returns The unit after it, or why not
 * @example recordUnitEvent(newUnit('u1', 'ordered'), { kind: 'move', move: { to: 'set-aside', by: 'ines', at: '2026-06-09' } }, { writeOffLimit: '50' })
 * // { ok: true, unit: { place: 'set-aside', … } }
 */
export function recordUnitEvent(unit: Unit, event: UnitEvent, rules: MoveRules): Recorded {
  switch (event.kind) {
    case 'move': {
      const may = checkMove(unit, event.move, rules);
      return may.ok ? settled(afterMove(unit, event.move), unit.place) : may;
    }
    case 'money': {
      const may = checkMoneyEntry(unit.money, event.entry);
      return may.ok ? settled({ ...unit, money: [...unit.money, event.entry] }, unit.place) : may;
    }
    case 'claim': {
      const may = checkClaim(unit.claim, event.claim, { open: openAmount(unit.money), place: unit.place });
      return may.ok ? { ok: true, unit: { ...unit, claim: event.claim } } : may;
    }
  }
}

function afterMove(unit: Unit, { to, by, at, jobId }: MoveRequest): Unit {
  const moves = [...unit.moves, { from: unit.place, to, by, at }];
  return { ...unit, place: to, moves, jobId: to === 'stocked' ? null : (jobId ?? unit.jobId) };
}

function settled(unit: Unit, from: UnitPlace): Recorded {
  const claim = claimAfter(unit.claim, openAmount(unit.money), { place: unit.place, from });
  return { ok: true, unit: { ...unit, claim } };
}
