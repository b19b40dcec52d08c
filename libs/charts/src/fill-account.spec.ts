import { describe, expect, it } from '@jest/globals';
import { type DrawingOptions } from './drawing.ts';
import { fillSums } from './fill-account/fill-account-data.ts';
import { fillAccount } from './fill-account.ts';
import { ACCOUNT } from './testing/samples.ts';
import { partBoxes, textFacts } from './testing/svg-facts.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 'f', widthPx: 740 };
const words = (svg: string): string[] => textFacts(svg).map(({ content }) => content);

describe('fillAccount', () => {
  it('adds up: what was out, what stays, what went in', () => {
    const { outL, staysL, inL, differenceL } = fillSums(ACCOUNT, 6.2);
    expect(outL).toBeCloseTo(5, 9);
    expect(staysL).toBeCloseTo(1.2, 9);
    expect(inL).toBeCloseTo(4.95, 9);
    expect(differenceL).toBeCloseTo(-0.05, 9);
  });

  it('draws both vessels to one scale: layers in proportion to their litres', () => {
    const layers = partBoxes(fillAccount(ACCOUNT, OPTIONS).svg, 'layer');
    const [missing, kept, waste, stays, staysAgain, first, shortRun, hot, morning] = layers.map(({ height }) => height);
    const pxPerL = (kept ?? 0) / 3.2;
    expect(
      [missing, waste, stays, staysAgain, first, shortRun, hot, morning].map((height) => Math.round(((height ?? 0) / pxPerL) * 100) / 100),
    ).toEqual([0.2, 1.6, 1.2, 1.2, 4.7, 0.15, 0.06, 0.04]);
  });

  it('draws the morning top-up on its own rule in proportion to the limit', () => {
    const taken = (volumeL: number): number =>
      partBoxes(fillAccount({ ...ACCOUNT, nextMorning: { volumeL } }, OPTIONS).svg, 'took')[0]?.width ?? 0;
    expect(taken(0.15) / taken(0.05)).toBeCloseTo(3, 2);
    // The rule reaches to twice the limit, so the limit stands in its middle.
    expect(taken(0.15)).toBeCloseTo((740 - 28) / 2, 1);
  });

  it('says the difference, the tolerance and the verdict in words', () => {
    expect(words(fillAccount(ACCOUNT, OPTIONS).svg)).toEqual(
      expect.arrayContaining(['50 mL short', 'tolerance ± 200 mL, fits', 'about 200 mL', 'Next morning: 40 mL']),
    );
    expect(words(fillAccount({ ...ACCOUNT, nextMorning: { volumeL: 0.62 } }, OPTIONS).svg)).toContain('530 mL over');
  });

  it('takes the shrink on mixing off the first fill, and says so', () => {
    const { svg, table } = fillAccount({ ...ACCOUNT, shrinkL: 0.06 }, OPTIONS);
    expect(words(svg)).toEqual(expect.arrayContaining(['110 mL short', 'first fill, 60 mL shrink on mixing']));
    expect(table.rows).toContainEqual(['shrink on mixing', '−60 mL']);
    const first = (shrinkL: number): number => partBoxes(fillAccount({ ...ACCOUNT, shrinkL }, OPTIONS).svg, 'layer')[5]?.height ?? 0;
    expect(first(0.06) / first(0)).toBeCloseTo(4.64 / 4.7, 2);
  });

  it('is ruled in quarts where it is asked for, and says no litre', () => {
    const { svg, table } = fillAccount({ ...ACCOUNT, shrinkL: 0.06, unit: 'US qt' }, OPTIONS);
    // 1 US qt is 0.946352946 L (NIST Special Publication 811): 6.2 L are 6.55, 40 mL are 0.04
    expect(words(svg)).toEqual(expect.arrayContaining(['of 6.55 US qt at the cold mark', 'Next morning: 0.04 US qt', '0.12 US qt short']));
    expect([...words(svg), ...table.rows.flat()].filter((text) => / m?L\b/.test(text))).toEqual([]);
    const layers = (unit: 'L' | 'US qt'): number[] =>
      partBoxes(fillAccount({ ...ACCOUNT, unit }, OPTIONS).svg, 'layer').map(({ height }) => height);
    const [inL, inQt] = [layers('L'), layers('US qt')];
    inL.forEach((height, index) => expect(inQt[index]).toBeCloseTo(height, 1));
  });

  it('says what is not read yet', () => {
    const { svg, table } = fillAccount({ ...ACCOUNT, afterRunHot: null, nextMorning: null }, OPTIONS);
    expect(words(svg)).toEqual(expect.arrayContaining(['not yet', 'Next morning: not read yet']));
    expect(table.rows).toContainEqual(['next morning', 'not read']);
  });

  it('refuses millilitres entered as litres', () => {
    expect(() => fillAccount({ ...ACCOUNT, firstFill: { volumeL: 4700 } }, OPTIONS)).toThrow(
      'firstFill.volumeL is 4700 L: enter litres, not millilitres.',
    );
  });
});
