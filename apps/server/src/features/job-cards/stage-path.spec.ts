import { describe, expect, it } from '@jest/globals';
import { STAGE_MOVES, STAGES } from '#libs/checklist';
import { stagePath } from './stage-path.ts';

describe('stagePath', () => {
  it.each([
    ['expected', 'standing', ['standing']],
    ['spoken-of', 'standing', ['expected', 'standing']],
    ['closed-up', 'run-hot', ['filled', 'run-hot']],
    ['run-hot', 'opened', ['opened']],
    ['opened', 'opened', []],
    ['fell-through', 'opened', []],
  ] as const)('from %s to %s', (from, to, way) => {
    expect(stagePath(from, to)).toEqual(way);
  });

  it.each([
    ['keys-out', 'settling', ['settling']],
    ['filled', 'closed-up', ['closed-up']],
    ['settling', 'standing', ['opened', 'standing']],
    ['squared', 'settled', ['keys-out', 'settled']],
  ] as const)('what was taken back leads from %s to %s', (from, to, way) => {
    expect(stagePath(from, to, { isTakenBack: true })).toEqual(way);
  });

  it('only takes moves that exist', () => {
    for (const from of STAGES) {
      for (const to of STAGES) {
        const way = [from, ...stagePath(from, to)];
        for (const [index, stage] of way.slice(1).entries()) {
          expect(STAGE_MOVES.some((move) => move.from === way[index] && move.to === stage)).toBe(true);
        }
      }
    }
  });
});
