import { type Action } from '../actions/action.ts';
import { type CardState, type HistoryEntry } from '../card/card-state.ts';
import { isOpenHold } from '../card/derive-holds.ts';
import { isEvidence } from '../card/derive-step.ts';
import { settleCard } from '../card/settle-card.ts';
import { findStep } from '../template/steps-of.ts';
import { fieldsOf, textOrNull } from '../words/fields.ts';
import { addEntry, stepState, withHistory } from './add-entry.ts';
import { isUntouchedSince, withRoundsBefore } from './go-back.ts';
import { misfit, type Outcome } from './outcome.ts';
import { stepsDoneBehind } from './steps-done-behind.ts';

/** Free for so long after the tap, on the same tablet; afterwards it needs a reason. */
export const FREE_TAKE_BACK_MS = 30_000;

const NEVER: ReadonlySet<string> = new Set(['take-back', 'settle-difference', 'confirm-name']);

/**
 * Takes an action back: a counter-entry, nothing disappears. When that shuts a hold point behind which something has
 * already been done, a reason is needed at any time and a person is told.
 */
export function takeBack(card: CardState, action: Action): Outcome {
  const target = findTarget(card, action);
  if (!target) return misfit('nothing-to-take-back', 'There is nothing here to take back: it was taken back already, or never arrived.');
  const reason = textOrNull(fieldsOf(action.value)['reason']);
  if (target.kind === 'go-back' && !isUntouchedSince(card, target)) {
    return misfit('not-now', 'Steps have been done again since the job went back: that can no longer be taken back.');
  }
  const before = target.kind === 'go-back' ? withRoundsBefore(card, target) : card;
  const next = markTakenBack(addEntry(before, action), target, { action, reason });
  const reopened = reopenedBy(card, next, target);
  if (reason === null && (reopened !== null || !isFree(target, action))) {
    return misfit('needs-reason', reopened ?? 'More than 30 seconds have passed, or it was another tablet: say why it is taken back.');
  }
  return reopened === null ? { card: next } : { card: next, misfit: { code: 'hold-reopened', why: reopened } };
}

function findTarget(card: CardState, action: Action): HistoryEntry | null {
  const history = stepState(card, action.step)?.history ?? card.history.filter((entry) => entry.step === action.step);
  const live = history.filter((entry) => entry.takenBack === null && !NEVER.has(entry.kind));
  const of = fieldsOf(action.value)['of'];
  if (of !== undefined) return live.find((entry) => entry.actionId === of) ?? null;
  return live.at(-1) ?? null;
}

function isFree(target: HistoryEntry, action: Action): boolean {
  const passedMs = Date.parse(action.readAt) - Date.parse(target.readAt);
  return target.deviceId === (action.deviceId ?? null) && passedMs >= 0 && passedMs <= FREE_TAKE_BACK_MS;
}

function markTakenBack(card: CardState, target: HistoryEntry, { action, reason }: { action: Action; reason: string | null }): CardState {
  const { by, readAt, id: actionId } = action;
  const mark = (entry: HistoryEntry): HistoryEntry =>
    entry.actionId === target.actionId ? { ...entry, takenBack: { by, readAt, actionId, reason } } : entry;
  const state = stepState(card, target.step);
  return state ? withHistory(card, state, state.history.map(mark)) : { ...card, history: card.history.map(mark) };
}

/** In words, the steps that stand done behind a hold point which taking this back shuts; null when there are none. */
function reopenedBy(before: CardState, after: CardState, target: HistoryEntry): string | null {
  const hold = findStep(before.template, target.step)?.hold;
  if (hold === undefined || !(isEvidence(target) || target.kind === 'pass-without')) return null;
  if (!isOpenHold(before.holds[hold]) && before.holds[hold]?.spent !== true) return null;
  if (settleCard(after).holds[hold]?.state !== 'shut') return null;
  const done = stepsDoneBehind(before, hold);
  if (done.length === 0) return null;
  return `Taken back, it shuts a hold point behind which this is already done: ${done.map((step) => step.title).join(', ')}.`;
}
