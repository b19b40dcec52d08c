import { type Action } from '../actions/action.ts';
import { type CardState } from '../card/card-state.ts';
import { WAIT_KINDS } from '../card/waits.ts';
import { fieldsOf, oneOf, textIn } from '../words/fields.ts';
import { type Read } from '../words/read.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';

type Remark = 'note' | 'photo' | 'finding' | 'wait' | 'wait-over';

/** What is said beside the steps: notes, photos, findings, waits. Always possible, whatever is shut. */
export function addRemark(card: CardState, action: Action, kind: Remark): Outcome {
  const read = readRemark(card, action, kind);
  return read.ok ? { card: addEntry(card, action) } : misfit('bad-value', read.why);
}

function readRemark(card: CardState, { value }: Action, kind: Remark): Read<string> {
  const fields = fieldsOf(value);
  switch (kind) {
    case 'note':
      return textIn(fields['words'], 'The note');
    case 'photo':
      return textIn(fields['photo'], 'The photo');
    case 'finding': {
      const severity = oneOf(fields['severity'], ['now', 'soon', 'watch'] as const, 'How bad it is');
      return severity.ok ? textIn(fields['words'], 'What was found') : severity;
    }
    case 'wait':
      return oneOf(fields['for'], WAIT_KINDS, 'What is waited for');
    case 'wait-over': {
      const running = card.waits.flatMap((wait) => wait.actionId ?? []);
      return oneOf(fields['of'], running, 'Which wait is over');
    }
  }
}
