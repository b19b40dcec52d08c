import { peg } from '../marks/peg.ts';
import { coordinate } from '../pen/element.ts';
import { type Box, type Pen } from '../pen/pen.ts';
import { type Paint } from '../pen/paint.ts';
import { type Tone } from '../pen/tones.ts';
import { textWidth } from '../text/text-width.ts';
import { MARK_WORDS, type FeatureMark } from './features.ts';

const FIGURE = { sizePx: 16, weight: 700 } as const;
const WORD = { sizePx: 13, weight: 600 } as const;
const PEG_PX = 6;
const PAD_PX = 5;

interface Figure {
  readonly text: string;
  readonly mark: FeatureMark | undefined;
  readonly x: number;
  readonly y: number;
}

const BORDERS: Readonly<Record<FeatureMark, Tone>> = {
  fits: 'fits',
  'does-not': 'no',
  unsure: 'unsure',
  'not-read': 'ink2',
  next: 'on-lamp',
};

const plateSize = (text: string, mark: FeatureMark | undefined): { width: number; height: number; figureWidth: number } => {
  const figureWidth = textWidth(text, FIGURE) + (mark === undefined ? 0 : PEG_PX * 2 + 6);
  const width = Math.max(figureWidth, mark === undefined ? 0 : textWidth(MARK_WORDS[mark], WORD)) + PAD_PX * 2;
  return { width, height: mark === undefined ? 22 : 42, figureWidth };
};

/** The box of a dimension's figure, its middle at a point. */
function figureBox({ text, mark, x, y }: Figure): Box {
  const { width, height } = plateSize(text, mark);
  return { x: x - width / 2, y: y - height / 2, width, height };
}

/** A dimension's figure on a plate: plain, or with the mark and word of what is pointed out. */
function dimensionFigure(pen: Pen, figure: Figure): string {
  const { text, mark, x, y } = figure;
  const box = figureBox(figure);
  if (mark === undefined) {
    return pen.rect(box, { fill: pen.ground }) + pen.text(text, { ...FIGURE, x, y: y + 5.6, anchor: 'middle' });
  }
  const isNext = mark === 'next';
  const tone: Tone = isNext ? 'on-lamp' : 'ink';
  const paint: Paint = isNext ? { fill: 'lamp', stroke: 'on-lamp' } : { fill: 'sheet', stroke: BORDERS[mark] };
  const left = x - plateSize(text, mark).figureWidth / 2;
  const sign = isNext
    ? pen.circle([left + PEG_PX, y - 8.5], PEG_PX - 0.5, { stroke: 'on-lamp', dash: 'fine' })
    : peg(pen, mark, { centre: [left + PEG_PX, y - 8.5], radiusPx: PEG_PX });
  return (
    pen.rect(box, paint) +
    sign +
    pen.text(text, { ...FIGURE, x: left + PEG_PX * 2 + 6, y: y - 3, tone }) +
    pen.text(MARK_WORDS[mark], { ...WORD, x, y: y + 14, anchor: 'middle', tone: isNext ? 'on-lamp' : BORDERS[mark] })
  );
}

const HEAD = { length: 10, half: 3.4 };

interface DimensionLine extends Omit<Figure, 'x' | 'y'> {
  readonly from: number;
  readonly to: number;
  /** Where the line runs, across its direction. */
  readonly at: number;
  /** Where the extension lines start. */
  readonly fromEdge: number;
  readonly toEdge: number;
  readonly isKnown: boolean;
}

const linePaint = (isKnown: boolean): Paint => (isKnown ? { stroke: 'ink', width: 1.3 } : { stroke: 'ink', width: 1.3, dash: 'assumed' });
const EXTENSION: Paint = { stroke: 'edge', width: 1.2 };

/** A dimension over a width: extension lines, arrowheads, the figure in the middle. */
export function widthDimension(pen: Pen, { from, to, at, fromEdge, toEdge, isKnown, text, mark }: DimensionLine): string {
  const [a, b, y] = [coordinate(from), coordinate(to), coordinate(at)];
  const beyond = coordinate(at + (fromEdge > at ? -5 : 5));
  const clear = (edge: number): string => coordinate(edge + (edge > at ? -6 : 6));
  return (
    pen.path(`M${a} ${clear(fromEdge)}V${beyond}M${b} ${clear(toEdge)}V${beyond}`, EXTENSION) +
    pen.path(`M${a} ${y}H${b}`, linePaint(isKnown)) +
    pen.path(`M${a} ${y}l${HEAD.length} ${-HEAD.half}v${HEAD.half * 2}zM${b} ${y}l${-HEAD.length} ${-HEAD.half}v${HEAD.half * 2}z`, {
      fill: 'ink',
    }) +
    dimensionFigure(pen, { text, mark, x: (from + to) / 2, y: at })
  );
}

/** A dimension over a height. */
export function heightDimension(pen: Pen, { from, to, at, fromEdge, toEdge, isKnown, text, mark }: DimensionLine): string {
  const [a, b, x] = [coordinate(from), coordinate(to), coordinate(at)];
  const beyond = coordinate(at + 5);
  return (
    pen.path(`M${coordinate(fromEdge + 4)} ${a}H${beyond}M${coordinate(toEdge + 4)} ${b}H${beyond}`, EXTENSION) +
    pen.path(`M${x} ${a}V${b}`, linePaint(isKnown)) +
    pen.path(`M${x} ${a}l${-HEAD.half} ${HEAD.length}h${HEAD.half * 2}zM${x} ${b}l${-HEAD.half} ${-HEAD.length}h${HEAD.half * 2}z`, {
      fill: 'ink',
    }) +
    dimensionFigure(pen, { text, mark, x: at, y: (from + to) / 2 + (to - from) * 0.08 })
  );
}
