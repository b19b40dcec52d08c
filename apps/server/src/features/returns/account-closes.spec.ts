import { describe, expect, it } from '@jest/globals';
import { accountCloses } from './account-closes.ts';

const moves = [
  { from: 'expected', to: 'set-aside', units: 3 },
  { from: 'set-aside', to: 'fitted', units: 1 },
] as const;

describe('accountCloses', () => {
  it('says the sum over the places', () => {
    const account = accountCloses({
      made: 4,
      moves,
      at: new Map([
        ['expected', 1],
        ['set-aside', 2],
        ['fitted', 1],
      ]),
    });
    expect(account).toEqual({ isClosed: true, words: '4 units = 1 expected + 2 set aside + 1 fitted.' });
  });

  it('names the place that its moves contradict', () => {
    const account = accountCloses({
      made: 4,
      moves,
      at: new Map([
        ['expected', 1],
        ['set-aside', 1],
        ['fitted', 2],
      ]),
    });
    expect(account.isClosed).toBe(false);
    expect(account.words).toContain('Set aside: 1 there, 2 by their moves. Fitted: 2 there, 1 by their moves.');
  });

  it('does not close where a unit is nowhere', () => {
    expect(accountCloses({ made: 1, moves: [], at: new Map() }).isClosed).toBe(false);
    expect(accountCloses({ made: 0, moves: [], at: new Map() })).toEqual({ isClosed: true, words: '0 units = 0.' });
  });
});
