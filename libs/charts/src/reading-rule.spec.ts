import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type DrawingOptions } from './drawing.ts';
import { readingRule } from './reading-rule.ts';
import { countParts, partBoxes, textFacts } from './testing/svg-facts.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 'r', widthPx: 624 };
const rule = (tempC: number, uncertaintyC: number, limitC = 50) => readingRule({ limitC, reading: { tempC, uncertaintyC } }, OPTIONS);

describe('readingRule', () => {
  it('draws the full band: twice the uncertainty wide, ten px a degree here', () => {
    const [band] = partBoxes(rule(47.5, 2).svg, 'reading');
    expect(band).toMatchObject({ x: 12 + 355, width: 40 });
  });

  it('hatches from the limit to the end of the rule', () => {
    expect(partBoxes(rule(20, 2).svg, 'zone')).toMatchObject([{ x: 412, width: 200 }]);
  });

  it('reaches into the hatch exactly when reading and uncertainty together pass the limit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 15, max: 65 }), fc.integer({ min: 1, max: 5 }), (tempC, uncertaintyC) => {
        const { svg } = rule(tempC, uncertaintyC);
        const [band] = partBoxes(svg, 'reading');
        const [zone] = partBoxes(svg, 'zone');
        expect((band?.x ?? 0) + (band?.width ?? 0) > (zone?.x ?? 0)).toBe(tempC + uncertaintyC > 50);
      }),
    );
  });

  it('says in words what the band shows', () => {
    expect(rule(47.5, 2).title).toBe('47.5 ± 2 °C covers 45.5 to 49.5 °C, all of it at or under the limit of 50 °C.');
    expect(rule(47.5, 4).title).toBe('47.5 ± 4 °C covers 43.5 to 51.5 °C, which reaches across the limit of 50 °C.');
    expect(rule(60, 4).title).toContain('all of it over');
  });

  it('shows a reading off the rule by an arrow and its figure', () => {
    const { svg } = rule(92, 4);
    expect(countParts(svg, 'off')).toBe(1);
    expect(textFacts(svg).map(({ content }) => content)).toContain('92 ± 4');
  });

  it('draws a broken example without a reading, and no lamp', () => {
    const { svg, table } = readingRule({ limitC: 50, reading: null }, OPTIONS);
    expect(countParts(svg, 'example')).toBe(1);
    expect(svg).toContain('stroke-dasharray="7 5"');
    expect(svg).not.toContain('cf-lamp');
    expect(table.rows[0]).toEqual(['reading', 'not read']);
  });

  it('refuses an uncertainty below zero', () => {
    expect(() => rule(20, -1)).toThrow('reading.uncertaintyC is below zero');
  });
});
