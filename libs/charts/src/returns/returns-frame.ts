import { extent } from '../scale/extent.ts';
import { linearScale } from '../scale/linear-scale.ts';
import { type ReturnsTimelineData } from './returns-data.ts';

/** Where days lie. */
export interface ReturnsFrame {
  readonly left: number;
  readonly right: number;
  readonly todayX: number;
  readonly daysBack: number;
  readonly daysAhead: number;
  /** x of so many days ago. */
  readonly agoX: (days: number) => number;
  /** x of so many days ahead. */
  readonly aheadX: (days: number) => number;
  readonly isNarrow: boolean;
}

const LABELS_PX = 264;
const NARROW_BELOW_PX = 640;
const MOST_DAYS_BACK = 120;
const MOST_DAYS_AHEAD = 60;

/** Chooses how far back and ahead the days reach: far enough for every unit, within reason; what lies beyond stands at the end. */
export function returnsFrame(data: ReturnsTimelineData, widthPx: number): ReturnsFrame {
  const isNarrow = widthPx < NARROW_BELOW_PX;
  const left = isNarrow ? 14 : LABELS_PX;
  const right = widthPx - (isNarrow ? 4 : 12);
  const units = data.suppliers.flatMap((supplier) => supplier.units);
  const days = (side: 'sent' | 'shelf'): number[] => units.filter((unit) => unit.side === side).map((unit) => unit.days);
  const credits = data.suppliers.flatMap(({ creditDays }) => (creditDays === null ? [] : [creditDays + 6]));
  const back = extent([...days('sent').map((value) => value + 8), ...credits], { low: 0, high: 40 }).high;
  const ahead = extent(
    days('shelf').map((value) => value + 6),
    { low: 0, high: 21 },
  ).high;
  const daysBack = Math.min(MOST_DAYS_BACK, Math.ceil(back / 10) * 10);
  const daysAhead = Math.min(MOST_DAYS_AHEAD, Math.ceil(ahead));
  const todayX = left + (right - left) * 0.63;
  const agoX = linearScale({ low: 0, high: daysBack, start: todayX, end: left });
  const aheadX = linearScale({ low: 0, high: daysAhead, start: todayX, end: right });
  return {
    left,
    right,
    todayX,
    daysBack,
    daysAhead,
    agoX: (value) => Math.max(left, Math.min(todayX, agoX(value))),
    aheadX: (value) => Math.max(todayX, Math.min(right, aheadX(value))),
    isNarrow,
  };
}
