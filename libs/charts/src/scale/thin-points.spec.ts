import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Point } from '../pen/pen.ts';
import { thinPoints } from './thin-points.ts';

const columnsOf = (points: readonly Point[]): Map<number, number[]> => {
  const columns = new Map<number, number[]>();
  for (const [x, y] of points) columns.set(Math.round(x), [...(columns.get(Math.round(x)) ?? []), y]);
  return columns;
};

describe('thinPoints', () => {
  it('keeps a single spike among ten thousand readings', () => {
    const points = Array.from({ length: 10_000 }, (_, index): Point => [index / 50, index === 4321 ? 7 : 100]);
    const thinned = thinPoints(points);
    expect(thinned.length).toBeLessThan(820);
    expect(thinned.filter(([, y]) => y === 7)).toHaveLength(1);
  });

  it('keeps first, lowest, highest and last of every column in their order, and nothing else', () => {
    const step = fc.record({ dx: fc.double({ min: 0, max: 2, noNaN: true }), y: fc.double({ min: -100, max: 100, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 300 }), (steps) => {
        let x = 0;
        const points = steps.map(({ dx, y }): Point => [(x += dx), y]);
        const thinned = thinPoints(points);
        const [before, after] = [columnsOf(points), columnsOf(thinned)];
        expect([...after.keys()]).toEqual([...before.keys()]);
        for (const [column, ys] of before) {
          const kept = after.get(column) ?? [];
          expect(kept.length).toBeLessThanOrEqual(4);
          expect([Math.min(...kept), Math.max(...kept), kept[0], kept.at(-1)]).toEqual([
            Math.min(...ys),
            Math.max(...ys),
            ys[0],
            ys.at(-1),
          ]);
        }
        const order = thinned.map((point) => points.indexOf(point));
        expect(order).toEqual([...order].sort((a, b) => a - b));
      }),
    );
  });
});
