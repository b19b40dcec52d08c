import type { Action } from '#libs/checklist';

/** What can be taken back by itself. */
export const UNDOABLE: ReadonlySet<string> = new Set<Action['kind']>([
  'tick',
  'record',
  'pass',
  'pass-without',
  'not-applicable',
  'pour-jug',
  'start-timer',
  'stop-timer',
  'let-go',
]);
