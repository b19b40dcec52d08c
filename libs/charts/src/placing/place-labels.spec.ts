import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { placeLabels } from './place-labels.ts';

describe('placeLabels', () => {
  it('leaves labels where they want to be while they don’t touch', () => {
    expect(
      placeLabels(
        [
          { want: 80, size: 20 },
          { want: 20, size: 20 },
        ],
        { from: 0, to: 100 },
      ),
    ).toEqual([80, 20]);
  });

  it('parts two labels of one place evenly', () => {
    expect(
      placeLabels(
        [
          { want: 50, size: 20 },
          { want: 50, size: 20 },
        ],
        { from: 0, to: 100 },
      ),
    ).toEqual([40, 60]);
  });

  it('keeps them in the room', () => {
    expect(
      placeLabels(
        [
          { want: 10, size: 20 },
          { want: 12, size: 20 },
        ],
        { from: 0, to: 100 },
      ),
    ).toEqual([10, 30]);
  });

  it('never lets labels overlap, keeps their order, and keeps them in a room that is large enough', () => {
    const label = fc.record({ want: fc.double({ min: -200, max: 700, noNaN: true }), size: fc.double({ min: 1, max: 60, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(label, { maxLength: 9 }), (labels) => {
        const room = { from: 0, to: 560 };
        const placed = placeLabels(labels, room).map((middle, index) => ({
          middle,
          half: (labels[index]?.size ?? 0) / 2,
          want: labels[index]?.want ?? 0,
        }));
        const ordered = [...placed].sort((a, b) => a.middle - b.middle);
        ordered.slice(1).forEach((label, index) => {
          const last = ordered[index];
          expect(label.middle - label.half - ((last?.middle ?? 0) + (last?.half ?? 0))).toBeGreaterThan(-1e-6);
          expect(label.want).toBeGreaterThanOrEqual((last?.want ?? 0) - 1e-9);
        });
        for (const { middle, half } of placed) {
          expect(middle - half).toBeGreaterThan(room.from - 1e-6);
          expect(middle + half).toBeLessThan(room.to + 1e-6);
        }
      }),
    );
  });

  it('moves no group of labels further than it must: the shifts of a crowd in the open sum to nothing', () => {
    const wants = [100, 101, 102, 103];
    const placed = placeLabels(
      wants.map((want) => ({ want, size: 10 })),
      { from: 0, to: 300 },
    );
    expect(placed.reduce((sum, middle, index) => sum + middle - (wants[index] ?? 0), 0)).toBeCloseTo(0, 9);
  });
});
