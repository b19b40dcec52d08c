import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { splitRows } from './split-rows.ts';

const page = { pagePx: 1000, abovePx: 300, headPx: 30, sumsPx: 150 };
const whole = (rowsPx: readonly number[]): number => 300 + rowsPx.reduce((sum, row) => sum + row, 0) + 150;
const split = (rowsPx: readonly number[]): number[] => splitRows({ ...page, rowsPx, wholePx: whole(rowsPx) });
const rows = (count: number, height = 36): number[] => Array.from({ length: count }, () => height);

describe('splitRows', () => {
  it('leaves one page alone', () => {
    expect(split(rows(15))).toEqual([15]);
    expect(splitRows({ ...page, rowsPx: [], wholePx: 3000 })).toEqual([0]);
  });

  it('keeps two rows with the sums', () => {
    // 18 rows fit on the first page (688 px less 37 for the carried sum), the sums do not.
    expect(split(rows(18))).toEqual([16, 2]);
  });

  it('fills page by page', () => {
    const pages = split(rows(200));
    expect(pages[0]).toBe(18);
    expect(pages[1]).toBe(24);
    expect(pages.reduce((sum, count) => sum + count, 0)).toBe(200);
  });

  it('gives a row that is higher than a page a page of its own', () => {
    expect(split([36, 2000, 36])).toEqual([1, 1, 1]);
  });

  it('loses no row, and overfills no page but with one row', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 20, max: 900 }), { minLength: 1, maxLength: 60 }), (rowsPx) => {
        const counts = split(rowsPx);
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(rowsPx.length);
        let at = 0;
        counts.forEach((count, index) => {
          const height = rowsPx.slice(at, at + count).reduce((sum, row) => sum + row, 0);
          at += count;
          const room = index === 0 ? 700 : 1000 - 30 - 37;
          expect(count).toBeGreaterThan(0);
          if (count > 1) expect(height).toBeLessThanOrEqual(room);
        });
      }),
    );
  });
});
