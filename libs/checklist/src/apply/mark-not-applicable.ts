import { type Action } from '../actions/action.ts';
import { type CardState, type StepState } from '../card/card-state.ts';
import { type Step } from '../template/template.ts';
import { fieldsOf, textIn } from '../words/fields.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

/** A step that doesn't fit the car, with a reason. A hold point always fits; a debt is let go by the owner instead. */
export function markNotApplicable(card: CardState, action: Action, { step, state }: { step: Step; state: StepState }): Outcome {
  if (step.hold !== undefined) {
    return misfit('wrong-kind', `${step.title} is a hold point: record its evidence, or pass it without and say why.`);
  }
  if (step.debt && card.stage === 'keys-out')
    return misfit('not-now', `${step.title} is owed now: do it, or the owner lets it go with a reason.`);
  const isKeys = card.template.stageMarks.some((mark) => mark.stage === 'keys-out' && mark.steps.includes(step.key));
  if (isKeys) return misfit('wrong-kind', `${step.title} fits every car.`);
  if (state.state !== 'open' && state.state !== 'taken-back' && state.state !== 'not-applicable') {
    return misfit('already-done', `${step.title}: already done by ${state.by ?? 'someone'}. Take that back first.`);
  }
  const reason = textIn(fieldsOf(action.value)['reason'], `Why '${step.title}' doesn't fit this car`);
  return reason.ok ? { card: addEntry(card, action) } : misfit('needs-reason', reason.why);
}
