import type { TabletFacts } from '../../src/features/tablets/tablet-facts.ts';
import type { Answer, Taken, Trouble } from './answers.ts';
import type { StoredSheet } from './device-types.ts';

export interface Day extends TabletFacts {
  cards: StoredSheet[];
  who: { staffId: string; signIn: string } | null;
}

const PATIENCE_MS = 20_000;

async function ask<T>(address: string, init: RequestInit): Promise<Answer<T>> {
  const headers = { 'x-requested-with': 'fetch', ...(init.headers as Record<string, string> | undefined) };
  let answer: Response;
  try {
    answer = await fetch(address, { ...init, headers, cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS) });
  } catch {
    return { ok: false, trouble: 'no-network', status: 0, why: '' };
  }
  const body = (await answer.json().catch(() => null)) as unknown;
  if (answer.ok) return { ok: true, value: body as T };
  const { detail, errors } = (body ?? {}) as { detail?: string; errors?: { message: string }[] };
  const why = errors?.[0]?.message ?? detail ?? '';
  return { ok: false, trouble: troubleOf(answer.status), status: answer.status, why };
}

function troubleOf(status: number): Trouble {
  if (status === 401 || status === 403) return 'not-enrolled';
  return status >= 500 || status === 429 || status === 408 ? 'server-failed' : 'refused';
}

const json = (body: object): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

/** The workshop's server as the tablet speaks to it: by its own token, which the browser holds and no script sees. */
export const server = {
  day: (): Promise<Answer<Day>> => ask('/api/v1/tablet/day', {}),
  take: (actions: readonly object[]): Promise<Answer<{ answers: Taken[] }>> => ask('/api/v1/tablet/actions', json({ actions })),
  photo: (card: string, id: string, { query, bytes }: { query: URLSearchParams; bytes: ArrayBuffer }): Promise<Answer<unknown>> =>
    ask(`/api/v1/tablet/jobs/${card}/photos/${id}?${query}`, { method: 'PUT', headers: { 'content-type': 'image/jpeg' }, body: bytes }),
  signIn: (staffId: string, pin: string): Promise<Answer<{ signIn: string }>> => ask('/api/v1/tablet/sign-in', json({ staffId, pin })),
  lock: (): Promise<Answer<unknown>> => ask('/api/v1/tablet/lock', json({})),
};
