import { describe, expect, it } from '@jest/globals';
import type { Verdict } from '#libs/warm-up';
import type { KeptLog } from '../keeping/logs.repository.ts';
import { pairOfLogs } from './pair-of-logs.ts';

const log = (id: string, role: KeptLog['role'], verdict: Verdict, isWithdrawn = false): KeptLog =>
  ({ id, role, analysis: { verdict }, withdrawal: isWithdrawn ? { why: 'x', byId: 'x', at: new Date(0) } : null }) as unknown as KeptLog;

const ids = (logs: KeptLog[]) => {
  const { before, after } = pairOfLogs(logs);
  return [before?.id, after?.id];
};

describe('the logs that speak for a repair', () => {
  it('are the newest of each side', () => {
    const logs = [log('a', 'before', 'stuck-open'), log('b', 'before', 'opens-early'), log('c', 'after', 'normal')];
    expect(ids(logs)).toEqual(['b', 'c']);
  });

  it('are not pushed out by one that tells nothing', () => {
    expect(ids([log('a', 'after', 'normal'), log('b', 'after', 'not-enough'), log('c', 'after', 'doubtful-data')])).toEqual([
      undefined,
      'a',
    ]);
    expect(ids([log('a', 'after', 'doubtful-data'), log('b', 'after', 'not-enough')])).toEqual([undefined, 'b']);
  });

  it('are pushed out by a later one that tells of a fault', () => {
    expect(ids([log('a', 'after', 'normal'), log('b', 'after', 'stuck-open')])).toEqual([undefined, 'b']);
  });

  it('are none that were withdrawn', () => {
    expect(ids([log('a', 'before', 'stuck-open', true)])).toEqual([undefined, undefined]);
  });
});
