import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type CoolingPoint } from './cooling/cooling-data.ts';
import { splitAtLimit } from './cooling/split-at-limit.ts';
import { coolingCurve } from './cooling-curve.ts';
import { type DrawingOptions } from './drawing.ts';
import { countParts, overlappingTexts, textFacts } from './testing/svg-facts.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 'c', widthPx: 760 };
const at = (clockMin: number, tempC: number): CoolingPoint => ({ clockMin, tempC });
const words = (svg: string): string[] => textFacts(svg).map(({ content }) => content);
const part = (svg: string, name: string): string => svg.slice(svg.indexOf(`data-part="${name}"`)).split('</g>')[0] ?? '';

describe('splitAtLimit', () => {
  it('cuts where the line crosses', () => {
    expect(splitAtLimit([at(0, 60), at(10, 40)], 50)).toEqual([
      { isOver: true, points: [at(0, 60), at(5, 50)] },
      { isOver: false, points: [at(5, 50), at(10, 40)] },
    ]);
  });

  it('leaves a line on one side whole', () => {
    expect(splitAtLimit([at(0, 40), at(10, 50)], 50)).toHaveLength(1);
  });

  it('loses no point and never mixes sides', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { maxLength: 30 }), (temps) => {
        const points = temps.map((tempC, index) => at(index, tempC));
        const pieces = splitAtLimit(points, 50);
        expect(pieces.flatMap((piece) => piece.points).filter((point) => points.includes(point))).toEqual(points);
        for (const { isOver, points: piece } of pieces) {
          expect(piece.every(({ tempC }) => (isOver ? tempC >= 50 : tempC <= 50))).toBe(true);
        }
      }),
    );
  });
});

describe('coolingCurve', () => {
  const data = { readings: [at(486, 88), at(565, 58)], estimate: [at(565, 58), at(585, 50), at(605, 43)], limitC: 50, nowMin: 580 };

  it('draws measured solid, estimated broken, the limit as a chain line', () => {
    const { svg } = coolingCurve(data, OPTIONS);
    expect(part(svg, 'measured')).not.toContain('stroke-dasharray');
    expect(part(svg, 'estimate')).toContain('stroke-dasharray="7 5"');
    expect(part(svg, 'limit')).toContain('stroke-dasharray="14 4 3 4"');
  });

  it('says when to measure, not that the system may be opened', () => {
    const { svg, title } = coolingCurve(data, OPTIONS);
    expect(words(svg)).toContain('about 09:45: then measure');
    expect(title).toBe('Engine temperature: 58 °C at 09:25');
    expect(svg).toContain('an estimate never replaces measuring');
  });

  it('says nothing of the kind where the estimate stays above the limit', () => {
    expect(countParts(coolingCurve({ ...data, estimate: [at(565, 58), at(585, 55)] }, OPTIONS).svg, 'cold-at')).toBe(0);
  });

  it('joins readings hours apart by a broken line', () => {
    const { svg } = coolingCurve({ readings: [at(480, 20), at(500, 20), at(900, 88)], estimate: [], limitC: 50 }, OPTIONS);
    expect(svg).toContain('stroke-dasharray="7 5"');
  });

  it('keeps its words apart for any readings', () => {
    const point = fc.record({ clockMin: fc.integer({ min: 400, max: 1100 }), tempC: fc.integer({ min: 5, max: 110 }) });
    fc.assert(
      fc.property(
        fc.array(point, { maxLength: 20 }),
        fc.array(point, { maxLength: 10 }),
        fc.constantFrom(318, 760),
        (readings, estimate, widthPx) => {
          expect(overlappingTexts(coolingCurve({ readings, estimate, limitC: 50 }, { ...OPTIONS, widthPx }).svg)).toEqual([]);
        },
      ),
    );
  });
});
