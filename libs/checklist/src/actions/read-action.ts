import { fieldsOf, oneOf, textIn } from '../words/fields.ts';
import { type Read, refused, understood } from '../words/read.ts';
import { type Action, ACTION_KINDS } from './action.ts';

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:?\d\d)$/;

/**
 * Reads one action from whatever arrived.
 *
 * @param raw Any value
 * @returns The action, or why it is none, in words
 * @example readAction('x') // { ok: false, why: 'The action\'s id is missing.' }
 */
export function readAction(raw: unknown): Read<Action> {
  const fields = fieldsOf(raw);
  const id = textIn(fields['id'], "The action's id");
  if (!id.ok) return id;
  if (id.value !== fields['id']) return refused("The action's id begins or ends with a space.");
  const card = textIn(fields['card'], 'The card');
  if (!card.ok) return card;
  const kind = oneOf(fields['kind'], ACTION_KINDS, 'What was done');
  if (!kind.ok) return kind;
  const step = textIn(fields['step'], 'The step');
  if (!step.ok) return step;
  const by = textIn(fields['by'], 'Who did it');
  if (!by.ok) return by;
  const byProof = oneOf(fields['byProof'], ['session', 'picked-offline'] as const, 'How it is known who did it');
  if (!byProof.ok) return byProof;
  const readAt = fields['readAt'];
  if (typeof readAt !== 'string' || !INSTANT.test(readAt) || !Number.isFinite(Date.parse(readAt))) {
    return refused('The time it was done is no time with an offset, such as 2026-06-09T09:24:00+02:00.');
  }
  return understood({
    id: id.value,
    card: card.value,
    kind: kind.value,
    step: step.value,
    value: fields['value'] ?? null,
    readAt,
    by: by.value,
    byProof: byProof.value,
    ...(typeof fields['deviceId'] === 'string' ? { deviceId: fields['deviceId'] } : {}),
    ...(typeof fields['deviceSeq'] === 'number' ? { deviceSeq: fields['deviceSeq'] } : {}),
  });
}
