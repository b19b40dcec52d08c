import { describe, expect, it } from '@jest/globals';
import { differenceOf, expectedByMethod } from './cash-up-lines.ts';

describe('a cash-up', () => {
  it('expects in the drawer what was left in it and what came since', () => {
    const taken = [
      { method: 'cash', amount: '100.10' },
      { method: 'cash', amount: '-0.20' },
      { method: 'card', amount: '252.53' },
    ];
    expect(expectedByMethod(taken, '50.00')).toEqual({ cash: '149.90', card: '252.53', transfer: '0.00', other: '0.00' });
    expect(differenceOf({ expected: '149.90', counted: '150' })).toBe('0.10');
  });
});
