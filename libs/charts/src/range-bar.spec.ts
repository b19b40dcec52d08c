import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type DrawingOptions } from './drawing.ts';
import { rangeBar, type RangeMark } from './range-bar.ts';
import { overlappingTexts, partBoxes, textFacts, textsOutside } from './testing/svg-facts.ts';

const OPTIONS: DrawingOptions = { palette: 'print', idPrefix: 'b', widthPx: 330 };
const mark = (tempC: number): RangeMark => ({ tempC, knownBy: 'computed' });

describe('rangeBar', () => {
  it('fills from freezing to boiling, to scale', () => {
    const [narrow] = partBoxes(rangeBar({ freezes: mark(0), boils: mark(50) }, OPTIONS).svg, 'range');
    const [wide] = partBoxes(rangeBar({ freezes: mark(-50), boils: mark(150) }, OPTIONS).svg, 'range');
    expect((wide?.height ?? 0) / (narrow?.height ?? 1)).toBeCloseTo(4, 3);
  });

  it('never lets labels overlap or leave the drawing, wherever the temperatures lie', () => {
    const temp = fc.integer({ min: -60, max: 160 });
    const note = fc.constantFrom('freezes', 'boils, cap 1.1 bar, at 240 m', 'coldest air in ten winters, set for a place with a long name');
    const free = fc.record({ tempC: temp, knownBy: fc.constantFrom('measured' as const, 'assumed' as const, 'computed' as const), note });
    fc.assert(
      fc.property(
        fc.tuple(free, free, free, free, free, free),
        fc.constantFrom(318, 330, 420),
        ([freezes, boils, boilsOpen, coldest, hottest, thermostat], widthPx) => {
          const { svg } = rangeBar({ freezes, boils, boilsOpen, coldest, hottest, thermostat }, { ...OPTIONS, widthPx });
          expect(overlappingTexts(svg)).toEqual([]);
          expect(textsOutside(svg)).toEqual([]);
        },
      ),
    );
  });

  it('marks what lies outside the range by a word', () => {
    const words = textFacts(
      rangeBar({ freezes: mark(-12), boils: mark(121), coldest: { tempC: -22, knownBy: 'assumed' } }, OPTIONS).svg,
    ).map(({ content }) => content);
    expect(words.join(' ')).toContain('coldest air: outside the range');
  });

  it('is ruled in the unit it is asked for', () => {
    const data = { freezes: mark(-40), boils: mark(120) };
    const { svg, title, table } = rangeBar({ ...data, unit: '°F' }, OPTIONS);
    const words = textFacts(svg).map(({ content }) => content);
    expect(words).toEqual(expect.arrayContaining(['−40 °F', '248 °F', '300', '200']));
    expect(words.join(' ')).not.toContain('°C');
    expect([title, ...table.head, ...table.rows.flat()].join(' ')).not.toContain('°C');
    // To scale: 160 of the 200 K from −50 to 150 °C, 288 of the 400 Fahrenheit degrees from −100 to 300 °F.
    const height = (unit: '°C' | '°F'): number => partBoxes(rangeBar({ ...data, unit }, OPTIONS).svg, 'range')[0]?.height ?? 0;
    expect(height('°F') / height('°C')).toBeCloseTo(288 / 400 / (160 / 200), 2);
  });

  it('does not call boiling with the cap off outside', () => {
    const { svg } = rangeBar({ freezes: mark(-27), boils: mark(121), boilsOpen: mark(104) }, OPTIONS);
    expect(svg).not.toContain('outside the range');
  });

  it('underlines by how a figure is known', () => {
    const dashes = (knownBy: RangeMark['knownBy']): number =>
      rangeBar({ freezes: { tempC: -20, knownBy }, boils: { tempC: 120, knownBy } }, OPTIONS).svg.split('stroke-dasharray="3.4 2.9"')
        .length - 1;
    expect([dashes('measured'), dashes('assumed'), dashes('computed')]).toEqual([0, 2, 0]);
  });
});
