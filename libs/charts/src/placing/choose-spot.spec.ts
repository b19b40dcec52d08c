import { describe, expect, it } from '@jest/globals';
import { chooseSpot } from './choose-spot.ts';

const at = (x: number) => ({ x, y: 0, width: 10, height: 10 });
const bounds = { x: 0, y: 0, width: 100, height: 10 };

describe('chooseSpot', () => {
  it('takes the first free place', () => {
    expect(chooseSpot([at(0), at(20), at(40)], { bounds, lines: [at(5)], texts: [] })).toBe(1);
  });

  it('covers a line sooner than a text, and a text sooner than nothing at all', () => {
    expect(chooseSpot([at(0), at(20)], { bounds, lines: [at(20)], texts: [at(0)] })).toBe(1);
    expect(chooseSpot([at(0)], { bounds, lines: [], texts: [at(0)] })).toBe(0);
  });

  it('stays inside', () => {
    expect(chooseSpot([at(95), at(50)], { bounds, lines: [at(50)], texts: [] })).toBe(1);
  });
});
