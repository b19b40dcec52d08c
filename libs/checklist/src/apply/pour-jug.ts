import { type Action } from '../actions/action.ts';
import { obstacles } from '../card/can-do.ts';
import { type CardState, type StepState } from '../card/card-state.ts';
import { readFill } from '../evidence/read-fill.ts';
import { type Step } from '../template/template.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

/** One jug poured. A jug that arrives after the step was closed still went in: it counts, and somebody should look. */
export function pourJug(card: CardState, action: Action, { step, state }: { step: Step; state: StepState }): Outcome {
  if (step.evidence.kind !== 'jugs') return misfit('wrong-kind', `Nothing is poured at '${step.title}'.`);
  const read = readFill(action.value);
  if (!read.ok) return misfit('bad-value', `${step.title}: ${read.why}`);
  const blocked = obstacles(card, step);
  if (blocked[0]) return misfit(blocked[0].code, `${step.title}: ${blocked[0].why}`);
  const next = addEntry(card, action, read.value);
  if (state.state !== 'open' && state.state !== 'taken-back') {
    return {
      card: next,
      misfit: { code: 'already-done', why: `${step.title}: a jug came in after the step was closed. It is counted: check the fill.` },
    };
  }
  return { card: next };
}
