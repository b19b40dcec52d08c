import { type DecimalString, toDecimal } from '#libs/money';
import { type Answer, no, YES } from './answer.ts';
import { RETURN_REASONS } from './arrival-reasons.ts';
import { openAmount } from './open-amount.ts';
import { type Unit } from './unit.ts';
import { UNIT_MOVES } from './unit-moves.ts';
import { isEndPlace, UNIT_PLACE_WORDS, type UnitPlace } from './unit-places.ts';

/** A move as it is asked for: who, when, and the evidence the place needs. */
export interface MoveRequest {
  readonly to: UnitPlace;
  readonly by: string;
  readonly at: string;
  readonly jobId?: string;
  readonly signature?: string;
  readonly tracking?: string;
  readonly returnReason?: string;
  /** The document or customer it was sold with. */
  readonly document?: string;
  readonly isOwner?: boolean;
  readonly why?: string;
}

export interface MoveRules {
  /** Above this charged amount only the owner writes a unit off. */
  readonly writeOffLimit: DecimalString;
}

/**
 * Whether a unit may move: the table allows it, the evidence is there, and nothing is open where its story ends.
 *
 * @param unit The unit with its account
 * @param move Where to, who, when, evidence
 * @param rules The workshop's limit for writing off
 * @returns Yes, or why not
 * @example checkMove(newUnit('u1', 'ordered'), { to: 'fitted', by: 'jory', at: '2026-06-09' }, { writeOffLimit: '50' }).ok // false
 */
export function checkMove(unit: Pick<Unit, 'place' | 'money'>, move: MoveRequest, rules: MoveRules): Answer {
  if (!UNIT_MOVES.some((one) => one.from === unit.place && one.to === move.to)) {
    return no(`A unit can't go from '${UNIT_PLACE_WORDS[unit.place]}' to '${UNIT_PLACE_WORDS[move.to]}'.`);
  }
  if (!hasText(move.by) || !hasText(move.at)) return no('Every move says who and when.');
  const evidence = checkEvidence(unit, move, rules);
  if (!evidence.ok) return evidence;
  const open = openAmount(unit.money);
  if (isEndPlace(move.to) && !open.isZero()) {
    return no(
      `${open.toFixed(2)} is still open: enter the credit, what the carrier paid, or accept the loss, before '${UNIT_PLACE_WORDS[move.to]}'.`,
    );
  }
  return YES;
}

function checkEvidence(unit: Pick<Unit, 'money'>, move: MoveRequest, rules: MoveRules): Answer {
  switch (move.to) {
    case 'fitted':
      return hasText(move.jobId) ? YES : no('Say in which job it was fitted: its cost follows it.');
    case 'sold':
      return hasText(move.document) ? YES : no('Say with which document it was sold.');
    case 'to-return':
      return RETURN_REASONS.some((reason) => reason === move.returnReason)
        ? YES
        : no('Say why it goes back: not needed, wrong, damaged or failed.');
    case 'handed-over':
      return hasText(move.signature) || hasText(move.tracking) ? YES : no('Handing over needs a signature or a tracking number.');
    case 'written-off':
      return checkWriteOff(unit, move, rules);
    case 'expected':
    case 'called-off':
    case 'never-came':
    case 'set-aside':
    case 'stocked':
    case 'gone-for-good':
    case 'taken-out':
      return YES;
  }
}

function checkWriteOff({ money }: Pick<Unit, 'money'>, move: MoveRequest, { writeOffLimit }: MoveRules): Answer {
  if (!hasText(move.why)) return no('Say why it is written off.');
  const charged = openAmount(money.filter((entry) => entry.kind === 'charged'));
  if (move.isOwner === true || charged.lessThanOrEqualTo(toDecimal(writeOffLimit))) return YES;
  return no(`Above ${writeOffLimit} only the owner writes a unit off.`);
}

function hasText(text: string | undefined): boolean {
  return text !== undefined && text.trim() !== '';
}
