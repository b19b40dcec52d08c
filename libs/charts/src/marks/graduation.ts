import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { type Tone } from '../pen/tones.ts';

interface Graduation {
  /** Where the rule's edge lies, in px. */
  readonly at: number;
  readonly place: (value: number) => number;
  readonly ticks: readonly number[];
  readonly minorTicks?: readonly number[];
  /** Every so many minor steps a longer mark, like the fives of a rule. */
  readonly isLonger?: (value: number) => boolean;
  readonly label: (value: number) => string;
  readonly sizePx: number;
  readonly tone?: Tone;
}

const LONG_PX = 14;
const MIDDLE_PX = 10;
const SHORT_PX = 6;

/** Marks and figures under a horizontal edge, or above it. */
export function horizontalGraduation(pen: Pen, spec: Graduation & { readonly side?: 'below' | 'above' }): string {
  const { at, place, ticks, minorTicks = [], isLonger, label, sizePx, tone = 'ink', side = 'below' } = spec;
  const sign = side === 'below' ? 1 : -1;
  const mark = (value: number, length: number): string => `M${coordinate(place(value))} ${coordinate(at)}v${coordinate(sign * length)}`;
  const baseline = side === 'below' ? at + LONG_PX + sizePx * 1.05 : at - LONG_PX - sizePx * 0.35;
  return (
    pen.path(minorTicks.map((value) => mark(value, isLonger?.(value) === true ? MIDDLE_PX : SHORT_PX)).join(''), {
      stroke: tone,
      width: 1.25,
    }) +
    pen.path(ticks.map((value) => mark(value, LONG_PX)).join(''), { stroke: tone }) +
    ticks.map((value) => pen.text(label(value), { x: place(value), y: baseline, sizePx, weight: 600, anchor: 'middle', tone })).join('')
  );
}

/** Marks and figures to the left of a vertical edge. */
export function verticalGraduation(pen: Pen, { at, place, ticks, minorTicks = [], label, sizePx, tone = 'ink' }: Graduation): string {
  const mark = (value: number, length: number): string => `M${coordinate(at)} ${coordinate(place(value))}h${coordinate(-length)}`;
  return (
    pen.path(minorTicks.map((value) => mark(value, SHORT_PX)).join(''), { stroke: tone, width: 1.25 }) +
    pen.path(ticks.map((value) => mark(value, LONG_PX - 3)).join(''), { stroke: tone }) +
    ticks
      .map((value) =>
        pen.text(label(value), { x: at - LONG_PX - 2, y: place(value) + sizePx * 0.34, sizePx, weight: 600, anchor: 'end', tone }),
      )
      .join('')
  );
}
