import { type Action } from '../actions/action.ts';
import { type CardState, type HistoryEntry } from '../card/card-state.ts';
import { deriveStep } from '../card/derive-step.ts';
import { STAGE_MOVES } from '../stages/stage-moves.ts';
import { STAGE_WORDS, stageRank } from '../stages/stages.ts';
import { type Phase, type Step } from '../template/template.ts';
import { fieldsOf, oneOf, textIn } from '../words/fields.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

type BackTo = 'opened' | 'filled';

/** The job goes back to be opened or filled again: its steps from there on are open once more, their history stays. */
export function goBack(card: CardState, action: Action): Outcome {
  const to = oneOf(fieldsOf(action.value)['to'], ['opened', 'filled'] as const, 'Where the job goes back to');
  if (!to.ok) return misfit('bad-value', to.why);
  const isAllowed = STAGE_MOVES.some((move) => move.kind === 'back' && move.from === card.stage && move.to === to.value);
  if (!isAllowed) return misfit('not-now', `From '${STAGE_WORDS[card.stage]}' the job can't go back to '${STAGE_WORDS[to.value]}'.`);
  const last = lastGoBack(card);
  if (last && isUntouchedSince(card, last)) return misfit('already-done', 'The job has just gone back: go on from there.');
  const reason = textIn(fieldsOf(action.value)['reason'], 'Why the job goes back');
  if (!reason.ok) return misfit('needs-reason', reason.why);
  return { card: addEntry(withRounds(card, to.value, 1), action) };
}

/** Whether nothing has been done in the round that this going back began, and it was the last. */
export function isUntouchedSince(card: CardState, entry: HistoryEntry): boolean {
  if (lastGoBack(card)?.actionId !== entry.actionId) return false;
  return stepsAgain(card, targetOf(entry)).every(({ key }) => {
    const state = card.steps[key];
    return !state?.history.some((one) => one.round === state.round);
  });
}

/** The card as if the job had not gone back. */
export function withRoundsBefore(card: CardState, entry: HistoryEntry): CardState {
  return withRounds(card, targetOf(entry), -1);
}

function lastGoBack(card: CardState): HistoryEntry | null {
  return card.history.filter((entry) => entry.kind === 'go-back' && entry.takenBack === null).at(-1) ?? null;
}

function targetOf(entry: HistoryEntry): BackTo {
  return fieldsOf(entry.value)['to'] === 'filled' ? 'filled' : 'opened';
}

function withRounds(card: CardState, to: BackTo, by: 1 | -1): CardState {
  const steps = { ...card.steps };
  for (const step of stepsAgain(card, to)) {
    const state = steps[step.key];
    if (state) steps[step.key] = deriveStep(step, state.round + by, state.history);
  }
  return { ...card, steps };
}

function stepsAgain(card: CardState, to: BackTo): readonly Step[] {
  return card.template.phases
    .filter((phase) => isDoneAgain(phase, to))
    .flatMap((phase) => phase.steps.filter((step) => step.once !== true));
}

function isDoneAgain(phase: Phase, to: BackTo): boolean {
  const rank = stageRank(phase.stageAfter);
  const from = stageRank(to);
  return rank <= stageRank('settled') && (to === 'opened' ? rank >= from : rank > from);
}
