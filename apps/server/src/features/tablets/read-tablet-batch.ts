import { cleanJson } from '../../platform/clean-json.ts';

/** More in one call than a tablet gathers in an hour; the rest comes with the next call. */
const MOST = 200;
const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
const MOST_SEQ = 2_147_483_647;

/** One thing that a tablet sent: an action with its card, and the sign-in that proves whose it is. */
export interface TabletAction {
  readonly id: string;
  readonly card: string;
  readonly deviceSeq: number | null;
  readonly signIn: string | null;
  /** The action alone, as the card takes it. */
  readonly action: Readonly<Record<string, unknown>>;
  /** All of it, as it can be kept. */
  readonly sent: unknown;
}

/**
 * Reads the envelopes of a batch; what is in them is judged one by one.
 *
 * @returns What is wrong, in words, where it is no batch at all
 */
export function readTabletBatch(body: unknown): readonly TabletAction[] | string {
  const list = fieldsOf(body)['actions'];
  if (!Array.isArray(list)) return 'Send the actions as a list.';
  if (list.length > MOST) return `Send at most ${MOST} actions in one call, the rest in the next.`;
  const batch = (list as readonly unknown[]).map(readOne);
  const bad = batch.indexOf(null);
  return bad === -1 ? batch.filter((one) => one !== null) : `Action ${bad + 1} has no id of its own, a UUID.`;
}

function readOne(raw: unknown): TabletAction | null {
  const { card, signIn, ...action } = fieldsOf(raw);
  const { id, deviceSeq } = action;
  if (typeof id !== 'string' || !UUID.test(id)) return null;
  return {
    id: id.toLowerCase(),
    card: typeof card === 'string' ? card.toLowerCase() : '',
    deviceSeq: typeof deviceSeq === 'number' && Number.isInteger(deviceSeq) && deviceSeq >= 0 && deviceSeq <= MOST_SEQ ? deviceSeq : null,
    signIn: typeof signIn === 'string' && UUID.test(signIn) ? signIn.toLowerCase() : null,
    action,
    sent: cleanJson(raw) ?? 'nested too deep to be kept',
  };
}

function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Readonly<Record<string, unknown>>) : {};
}
