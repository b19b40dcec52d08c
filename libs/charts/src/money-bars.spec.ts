import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type DrawingOptions } from './drawing.ts';
import { moneyBars } from './money-bars.ts';
import { overlappingTexts, partBoxes, textFacts, textsOutside } from './testing/svg-facts.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 'm', widthPx: 640 };
const euro = (amount: number) => ({ amount, text: `€${amount.toFixed(2)}` });
const month = (label: string, recovered: number, lost: number) => ({ label, recovered: euro(recovered), lost: euro(lost) });

describe('moneyBars', () => {
  it('makes columns as high as their amounts, recovered up and lost down from one line', () => {
    const { svg } = moneyBars({ form: 'by-month', months: [month('May', 200, 50), month('Jun', 100, 25)] }, OPTIONS);
    const [may, june] = partBoxes(svg, 'recovered');
    const [lostMay, lostJune] = partBoxes(svg, 'lost');
    expect((may?.height ?? 0) / (june?.height ?? 1)).toBeCloseTo(2, 2);
    expect((may?.height ?? 0) / (lostMay?.height ?? 1)).toBeCloseTo(4, 2);
    expect((lostMay?.height ?? 0) / (lostJune?.height ?? 1)).toBeCloseTo(2, 2);
    expect((may?.y ?? 0) + (may?.height ?? 0)).toBeCloseTo(lostMay?.y ?? 0, 2);
  });

  it('lays them down where the columns have no room for their values', () => {
    const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug'].map((label, index) => month(label, 100 * (index + 1), 0));
    const lying = partBoxes(moneyBars({ form: 'by-month', months }, { ...OPTIONS, widthPx: 318 }).svg, 'recovered');
    expect(new Set(lying.map(({ height }) => height)).size).toBe(1);
    expect((lying[7]?.width ?? 0) / (lying[0]?.width ?? 1)).toBeCloseTo(8, 1);
  });

  it('draws a correction below zero to the other side', () => {
    const [bar, correction] = partBoxes(
      moneyBars({ form: 'by-month', months: [month('May', 100, 0), month('Jun', -50, 0)] }, OPTIONS).svg,
      'recovered',
    );
    expect((correction?.x ?? 0) + (correction?.width ?? 0)).toBeCloseTo(bar?.x ?? 0, 1);
    expect((bar?.width ?? 0) / (correction?.width ?? 1)).toBeCloseTo(2, 2);
  });

  it('writes every value and says what is late', () => {
    const { svg } = moneyBars({ form: 'by-age', ages: [{ label: 'over 30 days', out: euro(99.6), isLate: true }] }, OPTIONS);
    expect(textFacts(svg).map(({ content }) => content)).toEqual(['over 30 days', '€99.60 late']);
  });

  it('keeps values apart and inside for any amounts', () => {
    const amount = fc.integer({ min: -5000, max: 90_000 }).map((cents) => euro(cents / 100));
    const months = fc.array(fc.record({ label: fc.constantFrom('Jan', 'Sep', 'Dec 2026'), recovered: amount, lost: amount }), {
      minLength: 1,
      maxLength: 14,
    });
    fc.assert(
      fc.property(months, fc.constantFrom(318, 640, 1010), (given, widthPx) => {
        const { svg } = moneyBars({ form: 'by-month', months: given }, { ...OPTIONS, widthPx });
        expect(overlappingTexts(svg)).toEqual([]);
        expect(textsOutside(svg)).toEqual([]);
      }),
    );
  });
});
