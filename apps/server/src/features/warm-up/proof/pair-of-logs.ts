import type { Verdict } from '#libs/warm-up';
import type { KeptLog } from '../keeping/logs.repository.ts';
import type { LogRole } from '../log-setting.ts';

/** The log that speaks for each side of the repair. */
export interface LogPair {
  before: KeptLog | null;
  after: KeptLog | null;
}

const SAYS_NOTHING: ReadonlySet<Verdict> = new Set(['not-enough', 'doubtful-data']);

/** The newest that tells something: a log that was too short doesn't push out one that was not. Withdrawn ones don't count. */
export function pairOfLogs(inOrder: readonly KeptLog[]): LogPair {
  const counting = inOrder.filter(({ withdrawal }) => withdrawal === null);
  const speaking = (role: LogRole): KeptLog | null => {
    const own = counting.filter((log) => log.role === role);
    return own.findLast(({ analysis }) => !SAYS_NOTHING.has(analysis.verdict)) ?? own.at(-1) ?? null;
  };
  return { before: speaking('before'), after: speaking('after') };
}
