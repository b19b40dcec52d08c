import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { extent } from '../scale/extent.ts';
import { linearScale } from '../scale/linear-scale.ts';
import { textWidth } from '../text/text-width.ts';
import { type MoneyAmount, type MoneyMonth } from './money-data.ts';

const VALUE = { sizePx: 14, weight: 600 } as const;
const LABEL = { sizePx: 14, weight: 600 } as const;
const GAP_PX = 10;
const KEY_PX = 30;
const VALUE_PX = 20;
const MOST_BAR_PX = 34;
const SPAN_PX = 220;

/** The room one month needs so that its values don't touch the next month's. */
const slotNeeded = (months: readonly MoneyMonth[]): number =>
  Math.max(
    0,
    ...months.flatMap(({ recovered, lost, label }) => [
      textWidth(recovered.text, VALUE),
      textWidth(lost.text, VALUE),
      textWidth(label, LABEL),
    ]),
  ) + GAP_PX;

/** Whether columns can show the months: their values need room, and a correction below zero would stand on the other side's place. */
export function columnsFit(months: readonly MoneyMonth[], widthPx: number): boolean {
  const hasCorrection = months.some(({ recovered, lost }) => recovered.amount < 0 || lost.amount < 0);
  return months.length > 0 && !hasCorrection && slotNeeded(months) * months.length <= widthPx;
}

/** Recovered stands up from the line, lost hangs below it, to one scale; amounts are written at the ends. */
export function moneyColumns(pen: Pen, months: readonly MoneyMonth[], widthPx: number): { body: string; heightPx: number } {
  const values = months.flatMap(({ recovered, lost }) => [recovered.amount, -lost.amount]);
  const reach = extent(values, { low: 0, high: 0 });
  const top = KEY_PX + VALUE_PX;
  const yOf = linearScale(
    reach.low === reach.high ? { low: 0, high: 1, start: top + SPAN_PX, end: top } : { ...reach, start: top + SPAN_PX, end: top },
  );
  const zeroY = yOf(0);
  const slot = widthPx / months.length;
  const barPx = Math.min(MOST_BAR_PX, slot * 0.4);
  const bar = (value: MoneyAmount, { x, name }: { x: number; name: 'recovered' | 'lost' }): string => {
    const isUp = name === 'recovered';
    const end = yOf(isUp ? value.amount : -value.amount);
    const box = { x, y: Math.min(zeroY, end), width: barPx, height: Math.abs(end - zeroY) };
    return (
      pen.part(name, pen.rect(box, isUp ? { fill: 'green' } : { pattern: pen.id('lost'), stroke: 'no' })) +
      pen.text(value.text, { ...VALUE, x: x + barPx / 2, y: isUp ? end - 6 : end + 17, anchor: 'middle' })
    );
  };
  const columns = months.map(({ recovered, lost, label }, index) => {
    const middle = slot * (index + 0.5);
    const x = middle - barPx / 2;
    return (
      bar(recovered, { x, name: 'recovered' }) +
      bar(lost, { x, name: 'lost' }) +
      pen.text(label, { ...LABEL, x: middle, y: top + SPAN_PX + VALUE_PX + 22, anchor: 'middle', tone: 'ink2' })
    );
  });
  return {
    body: moneyKey(pen) + columns.join('') + pen.path(`M0 ${coordinate(zeroY)}H${coordinate(widthPx)}`, { stroke: 'ink' }),
    heightPx: top + SPAN_PX + VALUE_PX + 32,
  };
}

/** What full and hatched bars mean. */
export function moneyKey(pen: Pen): string {
  const box = { y: 4, width: 16, height: 14 };
  const lostX = 28 + textWidth('recovered', LABEL) + 22;
  return (
    pen.rect({ ...box, x: 0 }, { fill: 'green' }) +
    pen.text('recovered', { ...LABEL, x: 24, y: 16 }) +
    pen.rect({ ...box, x: lostX }, { pattern: pen.id('lost'), stroke: 'no' }) +
    pen.text('lost', { ...LABEL, x: lostX + 24, y: 16 })
  );
}
