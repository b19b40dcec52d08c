import { type Answer, no, YES } from './answer.ts';

export const CORE_STATES = ['charged', 'part-held', 'handed-over', 'credited', 'refused', 'forfeited'] as const;

export type CoreState = (typeof CORE_STATES)[number];

/** The deposit on an old part: its own record beside the unit. An unused unit's core charge is credited with it, without an old part. */
export const CORE_MOVES: readonly { readonly from: CoreState; readonly to: CoreState }[] = [
  { from: 'charged', to: 'part-held' },
  { from: 'charged', to: 'credited' },
  { from: 'charged', to: 'forfeited' },
  { from: 'part-held', to: 'handed-over' },
  { from: 'part-held', to: 'forfeited' },
  { from: 'handed-over', to: 'credited' },
  { from: 'handed-over', to: 'refused' },
];

export interface CoreMove {
  readonly to: CoreState;
  readonly by: string;
  readonly at: string;
  readonly signature?: string;
  readonly tracking?: string;
  /** Whether the unit itself goes back unused: only then is the charge credited without an old part. */
  readonly isUnitReturned?: boolean;
  readonly why?: string;
}

/**
 * Whether a core charge may go on to another state.
 *
 * @param from Its state now
 * @param move The state asked for, who, when, and the evidence
 * @returns Yes, or why not
 * @example checkCoreMove('part-held', { to: 'handed-over', by: 'ines', at: '2026-06-09' }).ok // false
 */
export function checkCoreMove(from: CoreState, move: CoreMove): Answer {
  if (!CORE_MOVES.some((one) => one.from === from && one.to === move.to))
    return no(`A core charge can't go from '${from}' to '${move.to}'.`);
  if (move.by.trim() === '' || move.at.trim() === '') return no('Every change says who and when.');
  if (move.to === 'handed-over' && !hasText(move.signature) && !hasText(move.tracking)) {
    return no('Handing the old part over needs a signature or a tracking number.');
  }
  if (from === 'charged' && move.to === 'credited' && move.isUnitReturned !== true) {
    return no('Credited without an old part only when the unit itself went back unused.');
  }
  if (move.to === 'forfeited' && !hasText(move.why)) return no('Say why the core charge is given up.');
  return YES;
}

function hasText(text: string | undefined): boolean {
  return text !== undefined && text.trim() !== '';
}
