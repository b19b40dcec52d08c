import { checkInput } from './check-input.ts';
import { checkNotNegative } from './check-not-negative.ts';
import { type CoolingCurveData, type CoolingPoint } from './cooling/cooling-data.ts';
import { coolingFrame, type CoolingFrame } from './cooling/cooling-frame.ts';
import { coolingLine, coolingRings } from './cooling/cooling-lines.ts';
import { addFigures, addWord, type Candidate, type Written } from './cooling/cooling-words.ts';
import { splitAtLimit } from './cooling/split-at-limit.ts';
import { splitAtPauses } from './cooling/split-at-pauses.ts';
import { type Drawing, type DrawingOptions } from './drawing.ts';
import { horizontalGraduation, verticalGraduation } from './marks/graduation.ts';
import { lampPlate, plateBox } from './marks/plate.ts';
import { coordinate } from './pen/element.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Box, type Pen, type Point } from './pen/pen.ts';
import { lineBoxes } from './placing/line-boxes.ts';
import { formatClock } from './text/format-clock.ts';
import { formatFigure } from './text/format-figure.ts';
import { wrapText } from './text/wrap-text.ts';

/** A car that arrives hot, as shares of the time and of the limit; the shape only. */
const EXAMPLE: readonly Point[] = [
  [0.04, 1.25],
  [0.16, 1.16],
  [0.3, 1.07],
  [0.42, 1],
  [0.6, 0.91],
  [0.8, 0.82],
  [0.97, 0.76],
];

const byClock = <P extends CoolingPoint>(points: readonly P[]): P[] => [...points].sort((a, b) => a.clockMin - b.clockMin);

/** When the estimate first comes down through the limit after the last reading. */
const coldAt = (estimate: readonly CoolingPoint[], limitC: number, afterMin: number): number | null => {
  const pieces = splitAtLimit(estimate, limitC);
  const cold = pieces.find(({ isOver, points }, index) => index > 0 && !isOver && (points[0]?.clockMin ?? -Infinity) >= afterMin);
  return cold?.points[0]?.clockMin ?? null;
};

const axes = (pen: Pen, { left, right, top, bottom, xOf, yOf, clock, temps }: CoolingFrame): string =>
  pen.path(`M${left} ${top}V${bottom}H${right}`, { stroke: 'ink' }) +
  verticalGraduation(pen, {
    at: left,
    place: yOf,
    ticks: temps.ticks,
    minorTicks: temps.minorTicks,
    label: (tempC) => formatFigure(tempC),
    sizePx: 15,
  }) +
  horizontalGraduation(pen, { at: bottom, place: xOf, ticks: clock.ticks, minorTicks: clock.minorTicks, label: formatClock, sizePx: 15 }) +
  pen.text('°C', { x: left - 16, y: top - 6, sizePx: 14, anchor: 'end', tone: 'ink2' });

const now = (pen: Pen, nowMin: number | undefined, { xOf, bottom }: CoolingFrame): { line: string; plate: string } => {
  if (nowMin === undefined) return { line: '', plate: '' };
  const x = xOf(nowMin);
  const type = { sizePx: 15, face: 'sign', weight: 800 } as const;
  const box = plateBox(formatClock(nowMin), { ...type, x, y: 13 });
  const lineTop = box.y + box.height;
  return {
    line: pen.part(
      'now',
      pen.rect({ x: x - 2.5, y: lineTop, width: 5, height: bottom - lineTop }, { fill: 'lamp', stroke: 'on-lamp', width: 1.4 }),
    ),
    plate: lampPlate(pen, formatClock(nowMin), { ...type, box }),
  };
};

const examplePoints = ({ left, right, yOf }: CoolingFrame, limitC: number): Point[] =>
  EXAMPLE.map(([share, ofLimit]) => [left + share * (right - left), yOf(ofLimit * limitC)]);

const example = (pen: Pen, frame: CoolingFrame, limitC: number): string => {
  const lines = wrapText('no reading yet: measure before opening', { sizePx: 14, maxWidthPx: frame.right - frame.left - 28 });
  return pen.part(
    'example',
    pen.polyline(examplePoints(frame, limitC), { stroke: 'edge', width: 2.6, dash: 'assumed' }) +
      lines
        .map((line, row) =>
          pen.text(line, { x: frame.left + 14, y: frame.bottom - 22 - (lines.length - 1 - row) * 18, sizePx: 14, tone: 'ink2' }),
        )
        .join(''),
  );
};

const limitWords = ({ left, right, yOf }: CoolingFrame, limitC: number): Candidate[] => {
  const y = yOf(limitC);
  const type = { sizePx: 14, tone: 'ink2' } as const;
  const contents = [`${formatFigure(limitC)} °C, the top limit for opening`, `limit ${formatFigure(limitC)} °C`];
  return contents.flatMap((content): Candidate[] => [
    { content, spec: { ...type, x: right, y: y - 7, anchor: 'end' } },
    { content, spec: { ...type, x: right, y: y + 17, anchor: 'end' } },
    { content, spec: { ...type, x: left + 8, y: y + 17 } },
    { content, spec: { ...type, x: left + 8, y: y - 7 } },
  ]);
};

const coldWords = ({ xOf, yOf }: CoolingFrame, limitC: number, coldMin: number): Candidate[] => {
  const type = { sizePx: 15, weight: 600, tone: 'cold', x: xOf(coldMin) } as const;
  const content = `about ${formatClock(coldMin)}: then measure`;
  return [-36, -54, 40, 58, -80, 80].flatMap((shift) =>
    (['middle', 'start', 'end'] as const).map((anchor): Candidate => ({ content, spec: { ...type, y: yOf(limitC) + shift, anchor } })),
  );
};

const words = (pen: Pen, data: CoolingCurveData, { frame, coldMin }: { frame: CoolingFrame; coldMin: number | null }): Written => {
  const { readings, estimate, limitC, nowMin } = data;
  const inPx = (points: readonly CoolingPoint[]): Point[] => points.map(({ clockMin, tempC }) => [frame.xOf(clockMin), frame.yOf(tempC)]);
  const isEmpty = readings.length === 0 && estimate.length === 0;
  const upright = (clockMin: number): Box => ({ x: frame.xOf(clockMin) - 4, y: 0, width: 8, height: frame.bottom });
  const limitY = frame.yOf(limitC);
  const limitLine: Box = { x: frame.left, y: limitY - 2, width: frame.right - frame.left, height: 4 };
  const taken: Box[] = [
    ...lineBoxes(inPx(readings)),
    ...lineBoxes(isEmpty ? examplePoints(frame, limitC) : inPx(estimate)),
    ...(nowMin === undefined ? [] : [upright(nowMin)]),
    ...(coldMin === null ? [] : [{ ...upright(coldMin), y: limitY - 26, height: 46 }]),
  ];
  const limit = addWord(pen, { markup: '', texts: [] }, { candidates: limitWords(frame, limitC), lines: taken, frame });
  const withFigures = addFigures(pen, limit, { readings, lines: [...taken, limitLine], frame });
  if (coldMin === null) return withFigures;
  return addWord(pen, withFigures, { candidates: coldWords(frame, limitC, coldMin), lines: [...taken, limitLine], frame });
};

/**
 * Draws one job's temperature over the clock: readings solid with rings and whiskers, the estimate broken, the limit for opening a chain
 * line. Where the estimate comes down through the limit it says when to measure; it never says that the system may be opened.
 *
 * @throws ChartInputError when a figure is not finite or an uncertainty is below zero.
 */
export function coolingCurve(data: CoolingCurveData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  data.readings.forEach(({ uncertaintyC }, index) => checkNotNegative(uncertaintyC ?? 0, `readings.${index}.uncertaintyC`));
  const pen = createPen(options);
  const ordered: CoolingCurveData = { ...data, readings: byClock(data.readings), estimate: byClock(data.estimate) };
  const { readings, estimate, limitC, nowMin } = ordered;
  const frame = coolingFrame(ordered, options.widthPx);
  const coldMin = coldAt(estimate, limitC, readings.at(-1)?.clockMin ?? -Infinity);
  const limitY = coordinate(frame.yOf(limitC));
  const plumb = now(pen, nowMin, frame);
  const isEmpty = readings.length === 0 && estimate.length === 0;
  const pieces = splitAtPauses(readings);
  const pauses = pieces.slice(1).map((piece, index) => [...(pieces[index] ?? []).slice(-1), ...piece.slice(0, 1)]);
  const cold =
    coldMin === null
      ? ''
      : pen.part(
          'cold-at',
          pen.path(`M${coordinate(frame.xOf(coldMin))} ${coordinate(frame.yOf(limitC) - 26)}V${coordinate(frame.yOf(limitC) + 20)}`, {
            stroke: 'cold',
          }),
        );
  const body =
    axes(pen, frame) +
    pen.part('limit', pen.path(`M${frame.left} ${limitY}H${frame.right}`, { stroke: 'ink', width: 1.6, dash: 'limit' })) +
    plumb.line +
    cold +
    coolingLine(pen, estimate, { frame, limitC, isMeasured: false }) +
    pieces.map((piece) => coolingLine(pen, piece, { frame, limitC, isMeasured: true })).join('') +
    pauses.map((pause) => coolingLine(pen, pause, { frame, limitC, isMeasured: false })).join('') +
    coolingRings(pen, readings, frame) +
    words(pen, ordered, { frame, coldMin }).markup +
    (isEmpty ? example(pen, frame, limitC) : '') +
    plumb.plate;
  const last = readings.at(-1);
  return finishDrawing(
    {
      title:
        last === undefined
          ? 'Engine temperature: no reading yet'
          : `Engine temperature: ${formatFigure(last.tempC)} °C at ${formatClock(last.clockMin)}`,
      description:
        `The top limit for opening is ${formatFigure(limitC)} °C.` +
        (coldMin === null ? '' : ` By the estimate it falls below about ${formatClock(coldMin)}; an estimate never replaces measuring.`),
      table: {
        caption: 'Engine temperature over the clock',
        head: ['time', '°C', 'known by'],
        rows: [
          ...readings.map(({ clockMin, tempC, uncertaintyC }) => [
            formatClock(clockMin),
            formatFigure(tempC) + (uncertaintyC === undefined ? '' : ` ± ${formatFigure(uncertaintyC)}`),
            'measured',
          ]),
          ...estimate.map(({ clockMin, tempC }) => [formatClock(clockMin), formatFigure(tempC), 'estimate']),
        ],
      },
      heightPx: frame.heightPx,
      body,
    },
    options,
  );
}
