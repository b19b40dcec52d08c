import { type Action } from '../actions/action.ts';
import { type CardState, type StepState } from '../card/card-state.ts';
import { type Step } from '../template/template.ts';
import { fieldsOf, textIn } from '../words/fields.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

/** The owner lets a debt of the job go, with a reason. Whether it is the owner is for the caller to know. */
export function letGo(card: CardState, action: Action, { step, state }: { step: Step; state: StepState }): Outcome {
  const isOwed = card.debts.some((debt) => debt.step === step.key && debt.state === 'open');
  if (!isOwed) return misfit('not-now', `${step.title} is not owed: it stands at '${state.state}'.`);
  const reason = textIn(fieldsOf(action.value)['reason'], `Why '${step.title}' is let go`);
  return reason.ok ? { card: addEntry(card, action) } : misfit('needs-reason', reason.why);
}
