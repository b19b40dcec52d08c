import { coordinate } from '../pen/element.ts';
import { horizontalGraduation } from '../marks/graduation.ts';
import { type Pen } from '../pen/pen.ts';
import { scaleTicks } from '../scale/scale-ticks.ts';
import { formatFigure } from '../text/format-figure.ts';
import { textWidth } from '../text/text-width.ts';
import { type ReturnsFrame } from './returns-frame.ts';

export const HEAD_PX = 62;

const PLATE_TYPE = { sizePx: 16, face: 'sign', weight: 800 } as const;
const SIDE_TYPE = { sizePx: 14, weight: 700 } as const;
const DAY_STEPS = [5, 10, 20, 30, 60];

const sideWord = (long: string, short: string, roomPx: number): string => (textWidth(long, SIDE_TYPE) <= roomPx ? long : short);

/** Days back and weeks ahead along the top, with what each side means. */
export function returnsHead(pen: Pen, frame: ReturnsFrame, todayText: string): string {
  const { left, right, todayX, daysBack, daysAhead, agoX, aheadX, isNarrow } = frame;
  const back = scaleTicks({ low: 0, high: daysBack, maxCount: (todayX - left) / 56, steps: DAY_STEPS });
  const weekEvery = Math.max(1, Math.ceil(50 / ((right - todayX) / (daysAhead / 7))));
  const weeks = Array.from({ length: Math.floor(daysAhead / 7 / weekEvery) }, (_, index) => (index + 1) * weekEvery * 7);
  const singleDays = Array.from({ length: daysAhead + 1 }, (_, index) => index);
  const half = textWidth(todayText, PLATE_TYPE) / 2 + 12;
  const isClear = (x: number, halfLabel: number): boolean => Math.abs(x - todayX) > halfLabel + 12;
  const minorBack = back.minorTicks.filter((days) => days > 0);
  const graduation = { at: HEAD_PX - 2, sizePx: 14, side: 'above' } as const;
  const sent = sideWord('sent back, money not here yet', 'sent back', todayX - left - half - 10);
  const shelf = sideWord('still on our shelf: last day to send', 'on our shelf', right - todayX - half - 10);
  return (
    horizontalGraduation(pen, {
      ...graduation,
      place: agoX,
      ticks: back.ticks.filter((days) => days > 0 && isClear(agoX(days), 16)),
      minorTicks: minorBack,
      label: (days) => `${formatFigure(days)} d`,
    }) +
    horizontalGraduation(pen, {
      ...graduation,
      place: aheadX,
      ticks: weeks.filter((days) => aheadX(days) < right - 14),
      minorTicks: isNarrow ? [] : singleDays.filter((days) => days % 7 !== 0),
      label: (days) => `${days / 7} wk`,
    }) +
    pen.path(`M${coordinate(left)} ${HEAD_PX - 2}H${coordinate(right)}`, { stroke: 'ink' }) +
    pen.text(sent, { ...SIDE_TYPE, x: todayX - half - 8, y: 17, anchor: 'end' }) +
    pen.text(shelf, { ...SIDE_TYPE, x: todayX + half + 8, y: 17 })
  );
}

/** A stretch of the plumb line that marks today. */
export function todayLine(pen: Pen, { todayX }: ReturnsFrame, { fromY, toY }: { fromY: number; toY: number }): string {
  return pen.part(
    'today',
    pen.rect({ x: todayX - 3, y: fromY, width: 6, height: toY - fromY }, { fill: 'lamp', stroke: 'on-lamp', width: 1.6 }),
  );
}

/** The plate on the plumb line. */
export function todayPlate(pen: Pen, { todayX }: ReturnsFrame, todayText: string): string {
  const half = textWidth(todayText, PLATE_TYPE) / 2 + 12;
  const plate = `M${coordinate(todayX - half)} 2h${coordinate(half * 2)}v22h${coordinate(3.5 - half)}L${coordinate(todayX)} ${HEAD_PX - 2}l-3.5 ${24 - HEAD_PX + 2}H${coordinate(todayX - half)}z`;
  return (
    pen.path(plate, { fill: 'lamp', stroke: 'on-lamp' }) +
    pen.text(todayText, { ...PLATE_TYPE, x: todayX, y: 18.5, anchor: 'middle', tone: 'on-lamp' })
  );
}
