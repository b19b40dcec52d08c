import { describe, expect, it } from '@jest/globals';
import { type DrawingOptions } from './drawing.ts';
import { jugs } from './jugs.ts';
import { partPaths, textFacts } from './testing/svg-facts.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 'j', widthPx: 700 };

/** Height of a liquid from its outline M x base L x level …. */
const levelPx = (d: string): number => {
  const ys = [...d.matchAll(/[ML]-?[\d.]+ (-?[\d.]+)/g)].map((found) => Number(found[1]));
  return Math.max(...ys) - Math.min(...ys);
};

const amounts = (jugMl: number, ...amountsMl: number[]) =>
  jugs({ jugMl, markMl: 50, jugs: amountsMl.map((amountMl) => ({ liquid: 'water', amountMl })) }, OPTIONS);
const heights = (svg: string): number[] => partPaths(svg, 'level').map(levelPx);

describe('jugs', () => {
  it('fills in proportion to the amount, whatever the size', () => {
    const [full = 0, half = 0, tenth = 0] = heights(amounts(1000, 1000, 500, 100).svg);
    expect(half / full).toBeCloseTo(0.5, 3);
    expect(tenth / full).toBeCloseTo(0.1, 3);
    expect(heights(amounts(2000, 500).svg)[0]).toBeCloseTo(full / 4, 1);
  });

  it('labels every amount and says when a jug is full', () => {
    const words = textFacts(amounts(1000, 1000, 450).svg).map(({ content }) => content);
    expect(words).toEqual(expect.arrayContaining(['full', '450 mL', '500 mL', '1 L']));
  });

  it('wraps: more jugs make the drawing higher, never wider', () => {
    const height = (count: number): number =>
      Number(/height="(\d+)"/.exec(amounts(1000, ...Array.from({ length: count }, () => 500)).svg)?.[1]);
    expect(height(4)).toBe(height(1));
    expect(height(5)).toBe(2 * height(1));
    expect(height(11)).toBe(3 * height(1));
  });

  it('tells a poured jug by word and tick, without a lamp', () => {
    const { svg, table } = jugs({ jugMl: 1000, markMl: 50, jugs: [{ liquid: 'concentrate', amountMl: 700, isPoured: true }] }, OPTIONS);
    expect(textFacts(svg).map(({ content }) => content)).toEqual(expect.arrayContaining(['poured', '700 mL']));
    expect(svg).not.toContain('cf-lamp');
    expect(table.rows).toEqual([['1', 'concentrate', '700 mL', 'poured']]);
  });

  it('hatches by liquid', () => {
    const { svg } = jugs(
      {
        jugMl: 1000,
        markMl: 50,
        jugs: [
          { liquid: 'concentrate', amountMl: 1 },
          { liquid: 'water', amountMl: 1 },
        ],
      },
      OPTIONS,
    );
    expect(svg).toContain('url(#j-concentrate)');
    expect(svg).toContain('url(#j-water)');
  });

  it.each([
    [() => amounts(1000, 1200), "A jug of 1000 mL can't hold 1200 mL: split it into more jugs."],
    [() => amounts(1000, -1), 'jugs.0.amountMl is below zero'],
    [() => amounts(0, 0), 'A jug holds at least 1 mL'],
  ])('refuses what can’t be poured (%#)', (draw, message) => {
    expect(draw).toThrow(message);
  });
});
