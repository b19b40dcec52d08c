import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { extent } from '../scale/extent.ts';
import { linearScale } from '../scale/linear-scale.ts';
import { fitText } from '../text/fit-text.ts';
import { textWidth } from '../text/text-width.ts';
import { type MoneyAmount } from './money-data.ts';

const VALUE = { sizePx: 15, weight: 600 } as const;
const LABEL = { sizePx: 15, weight: 400 } as const;
const BAR_PX = 16;
const BAR_STEP_PX = 22;
const ROW_GAP_PX = 10;

/** One bar lying to the right. */
interface LyingBar {
  readonly name: 'recovered' | 'lost' | 'out' | 'late';
  readonly value: MoneyAmount;
}

/** A label and its bars. */
export interface LyingRow {
  readonly label: string;
  readonly bars: readonly LyingBar[];
}

/** Bars lying beside their labels, values written at their ends, all to one scale. */
export function moneyRows(
  pen: Pen,
  rows: readonly LyingRow[],
  { widthPx, topY }: { widthPx: number; topY: number },
): { body: string; heightPx: number } {
  const bars = rows.flatMap((row) => row.bars);
  const labelPx = Math.min(widthPx * 0.36, Math.max(0, ...rows.map(({ label }) => textWidth(label, LABEL))) + 14);
  const valuePx = Math.min(widthPx * 0.4, Math.max(0, ...bars.map(({ value }) => textWidth(value.text, VALUE))) + 10);
  const reach = extent(
    bars.map(({ value }) => value.amount),
    { low: 0, high: 0 },
  );
  const span = reach.low === reach.high ? { low: 0, high: 1 } : reach;
  const xOf = linearScale({ ...span, start: labelPx, end: widthPx - valuePx });
  const zeroX = xOf(0);
  const heights = rows.map((row) => row.bars.length * BAR_STEP_PX + ROW_GAP_PX);
  const topOf = (index: number): number => topY + heights.slice(0, index).reduce((sum, height) => sum + height, 0);
  const bottomY = topOf(rows.length);
  const drawn = rows.map(({ label, bars: rowBars }, index) => {
    const y = topOf(index) + ROW_GAP_PX / 2;
    const middle = y + (rowBars.length * BAR_STEP_PX) / 2;
    const lying = rowBars.map(({ name, value }, place) => {
      const end = xOf(value.amount);
      const barY = y + place * BAR_STEP_PX + (BAR_STEP_PX - BAR_PX) / 2;
      const box = { x: Math.min(zeroX, end), y: barY, width: Math.abs(end - zeroX), height: BAR_PX };
      const isHatched = name === 'lost' || name === 'late';
      return (
        pen.part(name, pen.rect(box, isHatched ? { pattern: pen.id('lost'), stroke: 'no' } : { fill: name === 'out' ? 'ink' : 'green' })) +
        pen.text(fitText(value.text, { ...VALUE, maxWidthPx: valuePx }), { ...VALUE, x: Math.max(zeroX, end) + 8, y: barY + 13 })
      );
    });
    return pen.text(fitText(label, { ...LABEL, maxWidthPx: labelPx - 8 }), { ...LABEL, x: 0, y: middle + 5 }) + lying.join('');
  });
  return {
    body: drawn.join('') + pen.path(`M${coordinate(zeroX)} ${coordinate(topY)}V${coordinate(bottomY)}`, { stroke: 'ink' }),
    heightPx: bottomY,
  };
}
