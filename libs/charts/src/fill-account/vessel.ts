import { type VolumeUnit } from '#libs/units';
import { peg } from '../marks/peg.ts';
import { verticalGraduation } from '../marks/graduation.ts';
import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { type Paint } from '../pen/paint.ts';
import { type PatternName } from '../pen/pattern.ts';
import { placeLabels } from '../placing/place-labels.ts';
import { linearScale } from '../scale/linear-scale.ts';
import { scaleTicks } from '../scale/scale-ticks.ts';
import { type Verdict } from '../drawing.ts';
import { formatFigure } from '../text/format-figure.ts';
import { formatInUnit } from '../text/format-in-unit.ts';
import { textWidth } from '../text/text-width.ts';
import { wrapText } from '../text/wrap-text.ts';

/** One layer in a vessel, or a level that is only pointed at. */
export interface Layer {
  readonly fromL: number;
  readonly toL: number;
  readonly figure: string;
  readonly note: string;
  readonly hatch: PatternName | null;
  /** Broken outline: not measured, or not there. */
  readonly isBroken: boolean;
  readonly verdict?: Verdict;
}

/** One vessel with its layers and their labels to the right. */
export interface Vessel {
  readonly name: string;
  readonly holdsL: number;
  readonly highL: number;
  readonly toleranceL: number | null;
  /** What the volumes here are in. */
  readonly unit: VolumeUnit;
  readonly layers: readonly Layer[];
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  /** Drawn broken as a whole. */
  readonly isExample: boolean;
}

const VESSEL = { scalePx: 40, bodyPx: 84, heightPx: 272, headPx: 34 } as const;

const LINE_PX = 17;
const LABEL_PX = 24;
const LABEL_AT_PX = VESSEL.scalePx + VESSEL.bodyPx + 52;
const FIGURE = { sizePx: 17, face: 'sign', weight: 800 } as const;

const notesOf = (layers: readonly Layer[], widthPx: number): string[][] =>
  layers.map(({ note }) => wrapText(note, { sizePx: 14, maxWidthPx: widthPx - LABEL_AT_PX, maxLines: 2 }));

const labelSizes = (notes: readonly (readonly string[])[]): number[] => notes.map(({ length }) => LABEL_PX + length * LINE_PX);

const bodyHeightPx = (layers: readonly Layer[], widthPx: number): number =>
  Math.max(
    VESSEL.heightPx,
    labelSizes(notesOf(layers, widthPx)).reduce((sum, size) => sum + size, 0),
  );

/** How high a vessel is drawn, head and foot included. */
export function vesselHeightPx(layers: readonly Layer[], widthPx: number): number {
  return VESSEL.headPx + bodyHeightPx(layers, widthPx) + 14;
}

const paintOf = (pen: Pen, layer: Layer): Paint => {
  const outline: Paint = layer.isBroken ? { stroke: 'edge', dash: 'assumed' } : { stroke: 'ink', width: 1.4 };
  return layer.hatch === null ? outline : { ...outline, pattern: pen.id(layer.hatch) };
};

/** Draws a vessel: layers to scale, its cold mark a chain line, the tolerance as a bracket, a label to every layer. */
export function drawVessel(pen: Pen, { name, holdsL, highL, toleranceL, unit, layers, x, y, widthPx, isExample }: Vessel): string {
  const top = y + VESSEL.headPx;
  const notes = notesOf(layers, widthPx);
  const sizes = labelSizes(notes);
  const bodyPx = bodyHeightPx(layers, widthPx);
  const bottom = top + bodyPx;
  const left = x + VESSEL.scalePx;
  const right = left + VESSEL.bodyPx;
  const yOf = linearScale({ low: 0, high: highL, start: bottom, end: top + 8 });
  const { ticks, minorTicks } = scaleTicks({ low: 0, high: highL, maxCount: 8 });
  const labelX = x + LABEL_AT_PX;
  const middles = placeLabels(
    layers.map(({ fromL, toL }, index) => ({ want: (yOf(fromL) + yOf(toL)) / 2, size: sizes[index] ?? 0 })),
    { from: top, to: bottom + 6 },
  );
  const markY = yOf(holdsL);
  const drawn = layers.map((layer) => {
    const [low, high] = [yOf(layer.fromL), yOf(layer.toL)];
    return pen.part(
      'layer',
      pen.rect({ x: left, y: Math.min(low, high), width: VESSEL.bodyPx, height: Math.abs(low - high) }, paintOf(pen, layer)),
    );
  });
  const labels = layers.map((layer, index) => {
    const baseline = (middles[index] ?? 0) - (sizes[index] ?? 0) / 2 + 18;
    const from = (yOf(layer.fromL) + yOf(layer.toL)) / 2;
    const leader = `M${right} ${coordinate(from)}h16L${labelX - 18} ${coordinate(baseline - 6)}h11`;
    return (
      pen.path(leader, { stroke: 'ink', width: 1.4, ...(layer.isBroken ? { dash: 'assumed' } : {}) }) +
      pen.text(layer.figure, { ...FIGURE, x: labelX, y: baseline }) +
      (layer.verdict === undefined
        ? ''
        : peg(pen, layer.verdict, { centre: [labelX + textWidth(layer.figure, FIGURE) + 16, baseline - 6], radiusPx: 8 })) +
      (notes[index] ?? [])
        .map((line, row) => pen.text(line, { x: labelX, y: baseline + (row + 1) * LINE_PX, sizePx: 14, tone: 'ink2' }))
        .join('')
    );
  });
  const bracketX = right + 7;
  const bracket =
    toleranceL === null || toleranceL === 0
      ? ''
      : pen.part(
          'tolerance',
          pen.path(
            `M${bracketX - 5} ${coordinate(yOf(holdsL + toleranceL))}h10M${bracketX - 5} ${coordinate(yOf(holdsL - toleranceL))}h10M${bracketX} ${coordinate(yOf(holdsL + toleranceL))}V${coordinate(yOf(holdsL - toleranceL))}`,
            { stroke: 'ink' },
          ),
        );
  return (
    pen.text(name, { ...FIGURE, sizePx: 18, x: left, y: y + 18 }) +
    pen.text(isExample ? 'system not known yet' : `of ${formatInUnit(holdsL, unit)} at the cold mark`, {
      x: left + 44,
      y: y + 18,
      sizePx: 14,
      tone: 'ink2',
    }) +
    pen.path(`M${left} ${top}V${coordinate(bottom)}H${right}V${top}z`, { fill: 'sheet' }) +
    drawn.join('') +
    pen.path(
      `M${left} ${top}V${coordinate(bottom)}H${right}V${top}`,
      isExample ? { stroke: 'edge', width: 3.2, dash: 'assumed' } : { stroke: 'ink', width: 3.2 },
    ) +
    verticalGraduation(pen, {
      at: left,
      place: yOf,
      ticks,
      minorTicks,
      label: (volumeL) => formatFigure(volumeL, { decimals: 2 }),
      sizePx: 14,
    }) +
    pen.text(unit === 'L' ? 'L' : 'qt', { x: left - 16, y: top - 6, sizePx: 14, anchor: 'end', tone: 'ink2' }) +
    pen.path(`M${left - 12} ${coordinate(markY)}H${right + 12}`, { stroke: 'ink', dash: 'limit' }) +
    bracket +
    labels.join('')
  );
}
