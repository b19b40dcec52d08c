import { type Action } from '../actions/action.ts';
import { type CardState, type HistoryEntry } from '../card/card-state.ts';
import { fieldsOf, oneOf } from '../words/fields.ts';
import { addEntry, withHistory } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

/** A person confirms, signed in, what was entered under their picked name while the tablet was offline. */
export function confirmName(card: CardState, action: Action): Outcome {
  if (action.byProof !== 'session') return misfit('bad-value', 'Confirming needs a sign-in: enter your PIN while the tablet is connected.');
  const all = [...card.history, ...Object.values(card.steps).flatMap((state) => state.history)];
  const own = all.filter((entry) => entry.by === action.by && entry.byProof === 'picked-offline').map((entry) => entry.actionId);
  const of = oneOf(fieldsOf(action.value)['of'], own, 'What is confirmed');
  if (!of.ok) return misfit('bad-value', `Nothing of ${action.by}'s is waiting to be confirmed under that number.`);
  const confirm = (entry: HistoryEntry): HistoryEntry => (entry.actionId === of.value ? { ...entry, byProof: 'confirmed' } : entry);
  let next: CardState = { ...card, history: card.history.map(confirm) };
  for (const state of Object.values(card.steps)) {
    if (state.history.some((entry) => entry.actionId === of.value)) next = withHistory(next, state, state.history.map(confirm));
  }
  return { card: addEntry(next, action) };
}
