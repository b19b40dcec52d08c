import { type Action } from '../actions/action.ts';
import { type CardState } from '../card/card-state.ts';
import { fieldsOf, textOrNull } from '../words/fields.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

/** A person has looked at a difference. It stays on the card, marked as settled. */
export function settleDifference(card: CardState, action: Action): Outcome {
  const of = fieldsOf(action.value)['of'];
  const isOpen = card.differences.some((one) => one.actionId !== null && one.actionId === of && one.settled === null);
  if (!isOpen) return misfit('not-now', 'There is no open difference under that number.');
  const settled = { by: action.by, readAt: action.readAt, words: textOrNull(fieldsOf(action.value)['words']) };
  const differences = card.differences.map((one) => (one.actionId === of && one.settled === null ? { ...one, settled } : one));
  return { card: addEntry({ ...card, differences }, action) };
}
