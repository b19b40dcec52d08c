import type { Action } from '#libs/checklist';
import type { FieldError } from '../../../platform/domain-error.ts';
import { cleanJson } from '../../../platform/clean-json.ts';

/** More in one call than a tablet gathers in an hour; the rest comes with the next call. */
export const MOST_ACTIONS = 200;

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
const KEY = /^[a-z][a-z0-9-]{0,59}$/;
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:?\d\d)$/;
const MOST_SEQ = 2_147_483_647;
const KNOWN = ['id', 'kind', 'step', 'value', 'readAt', 'by', 'byProof', 'deviceId', 'deviceSeq'];

export type ReadActions =
  { readonly ok: true; readonly actions: readonly Action[] } | { readonly ok: false; readonly errors: readonly FieldError[] };

/** Who sends, and to which card. */
export interface Sender {
  readonly card: string;
  readonly staffId: string;
}

/**
 * The actions of one call, in the form in which they are kept: times in UTC, ids in small letters. Only the envelope is
 * checked here: what an action says is judged by the card, and kept whatever the judgement.
 *
 * @param body Any JSON
 * @param sender An action of somebody else is theirs as the tablet says, until they confirm it
 */
export function readCardActions(body: unknown, sender: Sender): ReadActions {
  const list = fieldsOf(body)['actions'];
  if (!Array.isArray(list)) return refused('actions', 'Send the actions as a list.');
  if (list.length > MOST_ACTIONS) return refused('actions', `Send at most ${MOST_ACTIONS} actions in one call, the rest in the next.`);
  const errors: FieldError[] = [];
  const actions = (list as readonly unknown[]).flatMap((raw, index) => {
    const read = readOne(raw, sender);
    errors.push(...read.errors.map(({ field, message }) => ({ field: `actions.${index}.${field}`, message })));
    return read.action ? [read.action] : [];
  });
  return errors.length > 0 ? { ok: false, errors: errors.slice(0, 50) } : { ok: true, actions };
}

function refused(field: string, message: string): ReadActions {
  return { ok: false, errors: [{ field, message }] };
}

function readOne(raw: unknown, { card, staffId }: Sender): { action?: Action; errors: readonly FieldError[] } {
  const fields = fieldsOf(raw);
  const errors = problemsOf(fields);
  if (errors.length > 0) return { errors };
  const by = typeof fields['by'] === 'string' ? fields['by'].toLowerCase() : staffId;
  const { deviceId, deviceSeq } = fields;
  const action: Action = {
    id: String(fields['id']).toLowerCase(),
    card,
    kind: fields['kind'] as Action['kind'],
    step: String(fields['step']),
    value: cleanJson(fields['value'] ?? null),
    readAt: new Date(String(fields['readAt'])).toISOString(),
    by,
    byProof: by === staffId && fields['byProof'] !== 'picked-offline' ? 'session' : 'picked-offline',
    ...(typeof deviceId === 'string' ? { deviceId: deviceId.toLowerCase() } : {}),
    ...(typeof deviceSeq === 'number' ? { deviceSeq } : {}),
  };
  return { action, errors: [] };
}

function problemsOf(fields: Readonly<Record<string, unknown>>): readonly FieldError[] {
  const unknown = Object.keys(fields).find((name) => !KNOWN.includes(name));
  const { deviceId, deviceSeq, by, byProof } = fields;
  const checks: readonly (readonly [field: string, isRight: boolean, message: string])[] = [
    ['id', matches(fields['id'], UUID), 'Give the action an id of its own, a UUID.'],
    ['kind', matches(fields['kind'], KEY), 'Say what was done, such as "tick" or "record".'],
    ['step', matches(fields['step'], KEY), 'Name the step, the phase, or "card".'],
    ['value', cleanJson(fields['value'] ?? null) !== undefined, 'This is nested too deep to be a value of the card.'],
    ['readAt', isInstant(fields['readAt']), 'Give the time with its offset, such as 2026-06-09T09:24:00+02:00.'],
    ['by', by === undefined || matches(by, UUID), 'Name the person by their id, or leave this out.'],
    ['byProof', byProof === undefined || byProof === 'session' || byProof === 'picked-offline', 'Say "session" or "picked-offline".'],
    ['deviceId', isLeftOut(deviceId) || matches(deviceId, UUID), 'Name the device by its id, a UUID, or leave this out.'],
    ['deviceSeq', isLeftOut(deviceSeq) || isCount(deviceSeq), 'Count the device’s actions in whole numbers from 0.'],
    [(unknown ?? '').slice(0, 60), unknown === undefined, 'There is no such field here: leave it out.'],
  ];
  return checks.flatMap(([field, isRight, message]) => (isRight ? [] : [{ field, message }]));
}

const isLeftOut = (value: unknown): boolean => value === undefined || value === null;

const matches = (value: unknown, pattern: RegExp): boolean => typeof value === 'string' && pattern.test(value);

const isCount = (value: unknown): boolean => Number.isInteger(value) && Number(value) >= 0 && Number(value) <= MOST_SEQ;

/** A clock may be wrong by years after an empty battery, but not by centuries. */
function isInstant(value: unknown): boolean {
  if (!matches(value, INSTANT)) return false;
  const at = new Date(String(value));
  return !Number.isNaN(at.getTime()) && at.getUTCFullYear() >= 1970 && at.getUTCFullYear() < 2200;
}

function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Readonly<Record<string, unknown>>) : {};
}
