import { type Action } from '../actions/action.ts';
import { obstacles } from '../card/can-do.ts';
import { type CardState, type StepState } from '../card/card-state.ts';
import { isComplete } from '../card/derive-step.ts';
import { COLD_REASONS, PASS_REASONS } from '../holds/reasons.ts';
import { type Step } from '../template/template.ts';
import { type Answer, no, YES } from '../words/answer.ts';
import { fieldsOf, oneOf, textIn } from '../words/fields.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

/** Passing a hold point without its evidence: a reason the owner sees; for a warm engine a second person and why, and never under pressure. */
export function passWithout(card: CardState, action: Action, { step, state }: { step: Step; state: StepState }): Outcome {
  if (step.hold === undefined)
    return misfit('wrong-kind', `${step.title} is no hold point: record it, or say why it doesn't fit this car.`);
  const blocked = obstacles(card, step);
  if (blocked[0]) return misfit(blocked[0].code, `${step.title}: ${blocked[0].why}`);
  if (isComplete(state.state) && card.holds[step.hold]?.spent !== true)
    return misfit('already-done', `${step.title}: already passed by ${state.by ?? 'someone'}.`);
  const may = step.hold === 'safe-to-open' ? mayOpenWarm(card, action) : hasReason(action);
  return may.can ? { card: addEntry(card, action) } : misfit('bad-value', `${step.title}: ${may.why}`);
}

/**
 * Whether this action may open a system that is not cold by a reading.
 * Pressure has no exception anywhere; on a one-person site there is no second person, so one waits.
 */
function mayOpenWarm(card: CardState, action: Action): Answer {
  const fields = fieldsOf(action.value);
  if (fields['pressure'] !== 'none' || fields['hose'] === 'hard') {
    return no('it must be certain that there is no pressure. For pressure there is no exception.');
  }
  if (card.setting.onePersonSite)
    return no('nobody else is here. Wait until it is cold and measure again: on a one-person site there is no exception.');
  const reason = oneOf(fields['reason'], COLD_REASONS, 'The reason');
  if (!reason.ok) return no(reason.why);
  const second = textIn(fields['second'], 'The second person');
  if (!second.ok) return no(second.why);
  if (second.value === action.by) return no('the second person has to be somebody else.');
  const words = textIn(fields['words'], 'Why it can be opened all the same');
  return words.ok ? YES : no(words.why);
}

function hasReason(action: Action): Answer {
  const reason = oneOf(fieldsOf(action.value)['reason'], PASS_REASONS, 'The reason');
  return reason.ok ? YES : no(reason.why);
}
