import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { type Tone } from '../pen/tones.ts';
import { formatFigure } from '../text/format-figure.ts';
import { textWidth } from '../text/text-width.ts';
import { type ReturnsSupplier, type ReturnTag } from './returns-data.ts';
import { type ReturnsFrame } from './returns-frame.ts';

/** A tag with its place in its supplier's row. */
export interface PlacedTag {
  readonly tag: ReturnTag;
  /** Where its day lies. */
  readonly dayX: number;
  /** Where its nose stands: on its day, unless the tag would leave the drawing. */
  readonly tipX: number;
  readonly widthPx: number;
  readonly lane: number;
  readonly note: string;
  readonly noteX: number;
  readonly isLate: boolean;
}

export const LANE_PX = 64;
const TAG_PX = 38;
const NOSE_PX = 12;
const AMOUNT = { sizePx: 17, face: 'sign', weight: 800 } as const;
const NOTE_PX = 14;
const GAP_PX = 8;

const days = (count: number): string => `${formatFigure(count, { decimals: 0 })} d`;

const noteOf = (tag: ReturnTag, creditDays: number | null): { note: string; isLate: boolean } => {
  if (tag.side === 'shelf')
    return tag.days < 0 ? { note: `${tag.note}, ${days(-tag.days)} too late`, isLate: true } : { note: tag.note, isLate: false };
  const late = creditDays === null ? 0 : tag.days - creditDays;
  const note = `${tag.note}, ${days(tag.days)}`;
  return late > 0 ? { note: `${note}, ${formatFigure(late, { decimals: 0 })} late`, isLate: true } : { note, isLate: false };
};

interface Span {
  readonly from: number;
  readonly to: number;
}

const spanOf = ({ tag, tipX, widthPx, note, noteX }: Omit<PlacedTag, 'lane'>): Span => {
  const [from, to] = tag.side === 'sent' ? [tipX - widthPx, tipX] : [tipX, tipX + widthPx];
  const noteWidth = textWidth(note, { sizePx: NOTE_PX });
  return { from: Math.min(from, noteX - noteWidth / 2), to: Math.max(to, noteX + noteWidth / 2) };
};

/** Sets a row's tags, each with its tip on its day, in as many lanes as they need to stay clear of one another. */
export function placeTags({ units, creditDays }: ReturnsSupplier, frame: ReturnsFrame): PlacedTag[] {
  const ordered = [...units].sort((a, b) => (a.side === b.side ? b.days - a.days : a.side === 'sent' ? -1 : 1));
  const laneEnds: Span[][] = [];
  return ordered.map((tag) => {
    const { note, isLate } = noteOf(tag, creditDays);
    const widthPx = textWidth(tag.amountText, AMOUNT) + NOSE_PX + 30;
    const dayX = tag.side === 'sent' ? frame.agoX(tag.days) - 4 : frame.aheadX(Math.max(0, tag.days)) + 4;
    const tipX = tag.side === 'sent' ? Math.max(frame.left + widthPx, dayX) : Math.min(frame.right - widthPx, dayX);
    const half = textWidth(note, { sizePx: NOTE_PX }) / 2;
    const middle = tag.side === 'sent' ? tipX - widthPx / 2 : tipX + widthPx / 2;
    // A note stays on its own side of today, whatever its length.
    const [from, to] = tag.side === 'sent' ? [frame.left, frame.todayX - 7] : [frame.todayX + 7, frame.right];
    const noteX = Math.max(from + half, Math.min(to - half, middle));
    const placed = { tag, dayX, tipX, widthPx, note, noteX, isLate };
    const span = spanOf(placed);
    const isFree = (spans: readonly Span[]): boolean => spans.every(({ from, to }) => span.to + GAP_PX <= from || span.from >= to + GAP_PX);
    const found = laneEnds.findIndex(isFree);
    const lane = found === -1 ? laneEnds.length : found;
    laneEnds[lane] = [...(laneEnds[lane] ?? []), span];
    return { ...placed, lane };
  });
}

const toneOf = ({ tag, isLate }: PlacedTag): { fill: Tone; stroke: Tone; text: Tone } => {
  if (isLate) return { fill: 'no', stroke: 'no', text: 'sheet' };
  if (tag.isUrgent === true) return { fill: 'lamp', stroke: 'on-lamp', text: 'on-lamp' };
  return { fill: 'sheet', stroke: 'ink', text: 'ink' };
};

/** Shows the day of a tag whose nose had to stand elsewhere. */
const dayPin = (pen: Pen, dayX: number, y: number): string =>
  pen.path(`M${coordinate(dayX)} ${coordinate(y)}v-6`, { stroke: 'ink' }) + pen.circle([dayX, y - 6], 3.4, { fill: 'ink' });

/** Draws one tag: its nose on its day, the amount on it, who and how long beneath. */
export function drawTag(pen: Pen, placed: PlacedTag, topY: number): string {
  const { tag, tipX, widthPx, note, noteX, isLate } = placed;
  const turn = tag.side === 'sent' ? -1 : 1;
  const tones = toneOf(placed);
  const y = topY + placed.lane * LANE_PX;
  const [shoulder, end] = [tipX + turn * NOSE_PX, tipX + turn * widthPx];
  const shape = `M${coordinate(tipX)} ${coordinate(y + TAG_PX / 2)}L${coordinate(shoulder)} ${coordinate(y)}H${coordinate(end)}v${TAG_PX}H${coordinate(shoulder)}z`;
  const pin = Math.abs(tipX - placed.dayX) < 1 ? '' : dayPin(pen, placed.dayX, y);
  const isBold = isLate || tag.isUrgent === true;
  return (
    pin +
    pen.part('tag', pen.path(shape, { fill: tones.fill, stroke: tones.stroke, width: 2.4 })) +
    pen.circle([tipX + turn * (NOSE_PX + 5), y + TAG_PX / 2], 3, { fill: tones.text }) +
    pen.text(tag.amountText, {
      ...AMOUNT,
      x: (tipX + turn * (NOSE_PX + 12) + end) / 2,
      y: y + TAG_PX / 2 + 6,
      anchor: 'middle',
      tone: tones.text,
    }) +
    pen.text(note, {
      x: noteX,
      y: y + TAG_PX + 16,
      sizePx: NOTE_PX,
      weight: isBold ? 700 : 400,
      anchor: 'middle',
      tone: isLate ? 'no' : isBold ? 'ink' : 'ink2',
      halo: pen.ground,
    })
  );
}
