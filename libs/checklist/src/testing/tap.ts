import { type Action, type ActionKind } from '../actions/action.ts';

let made = 0;

/** An action as a tablet sends it, one minute after the last one made; for tests. */
export function tap(kind: ActionKind, step: string, value: unknown = null, over: Partial<Action> = {}): Action {
  made += 1;
  const readAt = new Date(Date.UTC(2026, 5, 9, 7) + made * 60_000).toISOString();
  return {
    id: `a${made}`,
    card: 'card-14',
    deviceId: 'tablet-1',
    deviceSeq: made,
    kind,
    step,
    value,
    readAt,
    by: 'jory',
    byProof: 'session',
    ...over,
  };
}

/** The same action a number of seconds after another one, on the same tablet. */
export function secondsAfter(action: Action, seconds: number): Pick<Action, 'readAt'> {
  return { readAt: new Date(Date.parse(action.readAt) + seconds * 1000).toISOString() };
}
