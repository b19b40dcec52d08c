import { type Action } from '../actions/action.ts';
import { obstacles } from '../card/can-do.ts';
import { type CardState } from '../card/card-state.ts';
import { findStep } from '../template/steps-of.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

/** Starts or stops the time of one person on a step or a phase; a step that is a timer belongs to nobody, anyone may stop it. Starting a step behind a shut hold point is doing it. */
export function runTimer(card: CardState, action: Action): Outcome {
  const step = findStep(card.template, action.step);
  const isAnyones = step?.evidence.kind === 'timer';
  const isRunning = card.workTimes.some(
    (time) => time.step === action.step && time.stoppedAt === null && (isAnyones || time.by === action.by),
  );
  if (action.kind === 'stop-timer') {
    return isRunning ? { card: addEntry(card, action) } : misfit('not-now', `No time is running at '${action.step}'.`);
  }
  const blocked = step ? obstacles(card, step) : [];
  if (step && blocked[0]) return misfit(blocked[0].code, `${step.title}: ${blocked[0].why}`);
  return isRunning ? misfit('already-done', `The time is already running at '${action.step}'.`) : { card: addEntry(card, action) };
}
