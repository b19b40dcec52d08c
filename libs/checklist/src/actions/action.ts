/** Everything a person can do on a card. */
export const ACTION_KINDS = [
  'tick',
  'record',
  'pass',
  'pass-without',
  'not-applicable',
  'take-back',
  'pour-jug',
  'start-timer',
  'stop-timer',
  'note',
  'photo',
  'finding',
  'go-back',
  'wait',
  'wait-over',
  'let-go',
  'confirm-name',
  'settle-difference',
] as const;

export type ActionKind = (typeof ACTION_KINDS)[number];

/** How it is known who acted: their own session, or a name picked on the tablet while it was offline. */
export type ByProof = 'session' | 'picked-offline';

/** The step of actions that belong to the whole card; a phase's key is allowed too, for notes, findings, waits and working time. */
export const WHOLE_CARD = 'card';

/** One tap, as it left the tablet. `value` is JSON; what it holds depends on kind and step. */
export interface Action {
  readonly id: string;
  readonly card: string;
  readonly deviceId?: string;
  readonly deviceSeq?: number;
  readonly kind: ActionKind;
  readonly step: string;
  readonly value: unknown;
  /** When it was read or done by the device's clock, ISO 8601 with offset. */
  readonly readAt: string;
  readonly by: string;
  readonly byProof: ByProof;
}
