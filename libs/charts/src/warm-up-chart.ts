import { checkInput } from './check-input.ts';
import { checkNotNegative } from './check-not-negative.ts';
import { type Drawing, type DrawingOptions } from './drawing.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Box, type Pen, type Point } from './pen/pen.ts';
import { type Tone } from './pen/tones.ts';
import { lineBoxes } from './placing/line-boxes.ts';
import { formatFigure } from './text/format-figure.ts';
import { wrapText } from './text/wrap-text.ts';
import { warmUpAxes, warmUpBand } from './warm-up/warm-up-axes.ts';
import { curvePieces, warmUpCurve, warmUpKnee, type CurveRole } from './warm-up/warm-up-curves.ts';
import { type WarmUpData, type WarmUpLog } from './warm-up/warm-up-data.ts';
import { warmUpFrame, type WarmUpFrame } from './warm-up/warm-up-frame.ts';
import { warmUpSpeed } from './warm-up/warm-up-speed.ts';
import { warmUpTable } from './warm-up/warm-up-table.ts';
import { bandText, curveSwatch, curveText, kneeText, writeText } from './warm-up/warm-up-words.ts';

/** The shape a normal warm-up has, as shares of time and of the way up. No measurement. */
const EXAMPLE: readonly Point[] = [
  [0, 0.17],
  [0.12, 0.42],
  [0.24, 0.62],
  [0.36, 0.78],
  [0.48, 0.92],
  [0.56, 1],
  [0.7, 0.99],
  [0.85, 1.01],
  [1, 1],
];
const EXAMPLE_C = 88;

const check = (data: WarmUpData): void => {
  for (const role of ['before', 'after'] as const) {
    const knee = data[role]?.knee;
    if (knee !== undefined && knee !== null) checkNotNegative(knee.halfWidthC, `${role}.knee.halfWidthC`);
  }
  if (data.bandHalfWidthC !== undefined) checkNotNegative(data.bandHalfWidthC, 'bandHalfWidthC');
};

const example = (pen: Pen, frame: WarmUpFrame, nominalC: number | null): string => {
  const { left, right, yOf } = frame;
  const points = EXAMPLE.map(([share, way]): Point => [left + share * (right - left), yOf(way * (nominalC ?? EXAMPLE_C))]);
  const type = { sizePx: frame.isNarrow ? 14 : 16, tone: 'ink2' } as const;
  const [x, y] = [left + (right - left) * 0.34, yOf((nominalC ?? EXAMPLE_C) * 0.42)];
  const words = wrapText('no log yet: from a cold start the curve climbs, bends and holds', {
    ...type,
    maxWidthPx: Math.min(230, right - x),
  });
  return pen.part(
    'example',
    pen.polyline(points, { stroke: 'edge', width: 3, dash: 'assumed' }) +
      words.map((line, row) => pen.text(line, { ...type, x, y: y + row * 20, halo: pen.ground })).join(''),
  );
};

interface Curve {
  readonly role: CurveRole;
  readonly log: WarmUpLog;
  readonly pieces: readonly (readonly Point[])[];
  readonly points: readonly Point[];
}

const drawLogs = (pen: Pen, frame: WarmUpFrame, { nominalC, curves }: { nominalC: number | null; curves: readonly Curve[] }): string => {
  const lines = curves.flatMap(({ points }) => lineBoxes(points));
  const bent = curves.flatMap(({ role, log }) => (log.knee ? [{ role, knee: log.knee }] : [])).reverse();
  const knees = bent.map(({ role, knee }, row) => ({
    role,
    knee,
    text: kneeText(knee, { frame, row, prefix: bent.length > 1 ? `${role}: ` : '' }),
  }));
  const leaders = knees.map(({ knee }) => ({
    x: frame.xOf(knee.minute) - 10,
    y: 0,
    width: 20,
    height: frame.yOf(knee.tempC - knee.halfWidthC),
  }));
  const band = nominalC === null ? null : bandText(frame, { nominalC, taken: { lines: [...lines, ...leaders], texts: [] } });
  const edges =
    frame.band === null
      ? []
      : [frame.band.low, frame.band.high].map((tempC) => ({
          x: frame.left,
          y: frame.yOf(tempC) - 3,
          width: frame.right - frame.left,
          height: 6,
        }));
  const marks = [...lines, ...edges, ...leaders];
  const names = curves.reduce<{ written: string; texts: readonly Box[] }>(
    ({ written, texts }, { role, log, points }) => {
      const text = curveText(log.label, { frame, points, taken: { lines: marks, texts }, role });
      if (text === null) return { written, texts };
      const name = curveSwatch(pen, text, role) + writeText(pen, text, surfaceAt(pen, frame, text.spec.y));
      return { written: written + name, texts: [...texts, text.box] };
    },
    { written: '', texts: [...knees.map(({ text }) => text.box), ...(band === null ? [] : [band.box])] },
  );
  return (
    curves.map(({ role, log, pieces }) => warmUpCurve(pen, log.fit, { role, frame, pieces })).join('') +
    knees
      .map(
        ({ role, knee, text }) =>
          warmUpKnee(pen, knee, { frame, role, labelY: text.spec.y - frame.typePx * 0.7 }) + writeText(pen, text, pen.ground),
      )
      .join('') +
    (band === null ? '' : writeText(pen, band, pen.band)) +
    names.written
  );
};

const surfaceAt = (pen: Pen, { band, yOf }: WarmUpFrame, y: number): Tone =>
  band !== null && y > yOf(band.high) && y < yOf(band.low) + 12 ? pen.band : pen.ground;

const describe = (data: WarmUpData): string => {
  const logs = [data.before, data.after].filter((log) => log !== null && log.samples.length > 0);
  if (logs.length === 0) return 'No log yet; a dashed example shows how a warm-up should look.';
  return logs
    .map((log) => {
      const knee = log?.knee ? `, the curve bends at ${formatFigure(log.knee.tempC)} ± ${formatFigure(log.knee.halfWidthC)} °C` : '';
      return `${log?.label}: ${log?.samples.length} readings${knee}`;
    })
    .join('; ');
};

/**
 * Draws warm-up logs over minutes: before (thin, with rings) and after (thick) on one another, the fitted line broken, the bend with its
 * interval, the band round the nominal temperature between chain lines, and the road speeds beneath. Long logs keep the extremes of
 * every px column; pauses in a log are bridged by a broken line. Without a log a dashed example is drawn.
 *
 * @throws ChartInputError when a figure is not finite or an interval is below zero.
 */
export function warmUpChart(data: WarmUpData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  check(data);
  const pen = createPen(options);
  const frame = warmUpFrame(data, options.widthPx);
  const curves = (['before', 'after'] as const).flatMap((role): Curve[] => {
    const log = data[role];
    if (log === null || log.samples.length === 0) return [];
    const pieces = curvePieces(log, frame);
    return [{ role, log, pieces, points: pieces.flat() }];
  });
  const body =
    warmUpBand(pen, frame, data.nominalC) +
    warmUpAxes(pen, frame) +
    warmUpSpeed(pen, data, frame) +
    (curves.length === 0 ? example(pen, frame, data.nominalC) : drawLogs(pen, frame, { nominalC: data.nominalC, curves }));
  return finishDrawing(
    {
      title: curves.length === 2 ? 'Warm-up before and after' : 'Warm-up',
      description: describe(data),
      table: warmUpTable(data),
      heightPx: frame.heightPx,
      body,
    },
    options,
  );
}
