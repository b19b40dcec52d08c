/** Why nothing could be sent, as far as the tablet can tell. */
export type Trouble = 'no-network' | 'server-failed' | 'not-enrolled' | 'refused';

/** An answer of the server, or why there is none. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly trouble: Trouble; readonly status: number; readonly why: string };

/** What became of one thing that was sent. */
export interface Taken {
  id: string;
  state: 'kept' | 'difference' | 'stray';
  why: string | null;
}
