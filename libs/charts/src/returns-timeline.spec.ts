import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type DrawingOptions } from './drawing.ts';
import { placeTags } from './returns/return-tags.ts';
import { type ReturnsSupplier, type ReturnTag } from './returns/returns-data.ts';
import { returnsFrame } from './returns/returns-frame.ts';
import { returnsTimeline } from './returns-timeline.ts';
import { RETURNS } from './testing/samples.ts';
import { countParts, overlappingTexts, partBoxes, textFacts, textsOutside } from './testing/svg-facts.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 's', widthPx: 1300 };
const words = (svg: string): string[] => textFacts(svg).map(({ content }) => content);

describe('returnsTimeline', () => {
  it('stands every nose on its day', () => {
    const frame = returnsFrame(RETURNS, 1300);
    const [supplier] = RETURNS.suppliers;
    const tags = supplier === undefined ? [] : placeTags(supplier, frame);
    const sent = tags.filter(({ tag }) => tag.side === 'sent');
    expect(
      sent.map(({ tag, tipX }) => Math.round(((frame.todayX - 4 - tipX) / (frame.todayX - frame.left)) * frame.daysBack) - tag.days),
    ).toEqual([0, 0, 0]);
  });

  it('hatches from the credit term back, and only where a term is agreed', () => {
    const frame = returnsFrame(RETURNS, 1300);
    const zones = partBoxes(returnsTimeline(RETURNS, OPTIONS).svg, 'late-zone');
    expect(zones).toHaveLength(1);
    expect((zones[0]?.x ?? 0) + (zones[0]?.width ?? 0)).toBeCloseTo(frame.agoX(21), 1);
  });

  it('says how late a unit is, in words and in the table', () => {
    const { svg, table } = returnsTimeline(RETURNS, OPTIONS);
    expect(words(svg)).toEqual(expect.arrayContaining(['key 18, 33 d, 12 late', 'key 2, 2 d too late', 'past 21 days']));
    expect(table.rows).toContainEqual(['Norrow Parts', 'sent back', '€41.00', 'key 18, 33 d, 12 late', '']);
    expect(table.rows).toHaveLength(6);
  });

  it('draws every unit once, and keeps them clear of one another, at any width', () => {
    const unit: fc.Arbitrary<ReturnTag> = fc.record({
      amountText: fc.constantFrom('€9.00', '€41.00', '€1,231.20'),
      side: fc.constantFrom('sent' as const, 'shelf' as const),
      days: fc.integer({ min: 0, max: 50 }),
      note: fc.constantFrom('key 18', 'Thursday', 'in 17 d'),
    });
    const supplier: fc.Arbitrary<ReturnsSupplier> = fc.record({
      name: fc.constant('Kestle & Daw'),
      terms: fc.constant('back in 14 days, credits in 30'),
      outText: fc.constant('€89.80'),
      creditDays: fc.option(fc.integer({ min: 7, max: 45 })),
      units: fc.array(unit, { maxLength: 10 }),
    });
    fc.assert(
      fc.property(fc.array(supplier, { minLength: 1, maxLength: 3 }), fc.constantFrom(318, 700, 1300), (suppliers, widthPx) => {
        const { svg } = returnsTimeline({ todayText: 'Tue 9', suppliers }, { ...OPTIONS, widthPx });
        expect(countParts(svg, 'tag')).toBe(suppliers.flatMap(({ units }) => units).length);
        expect(overlappingTexts(svg)).toEqual([]);
        expect(textsOutside(svg)).toEqual([]);
      }),
    );
  });

  it('refuses a unit sent in the future', () => {
    const suppliers = [
      { name: 'x', terms: '', outText: '', creditDays: null, units: [{ side: 'sent' as const, days: -1, amountText: '', note: '' }] },
    ];
    expect(() => returnsTimeline({ todayText: 'Tue 9', suppliers }, OPTIONS)).toThrow('suppliers.0.units.0.days is below zero');
  });
});
