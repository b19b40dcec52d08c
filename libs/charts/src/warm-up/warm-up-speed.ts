import { coordinate } from '../pen/element.ts';
import { type Pen, type Point } from '../pen/pen.ts';
import { linearScale } from '../scale/linear-scale.ts';
import { thinPoints } from '../scale/thin-points.ts';
import { formatFigure } from '../text/format-figure.ts';
import { splitAtGaps } from './split-at-gaps.ts';
import { type CurveRole } from './warm-up-curves.ts';
import { type WarmUpData, type WarmUpLog } from './warm-up-data.ts';
import { type WarmUpFrame } from './warm-up-frame.ts';

const hasSpeeds = (log: WarmUpLog | null): log is WarmUpLog => log?.samples.some(({ speedKmh }) => typeof speedKmh === 'number') === true;

const speedPieces = (log: WarmUpLog, xOf: (minute: number) => number, yOf: (speedKmh: number) => number): Point[][] => {
  const known = log.samples.filter(({ speedKmh }) => typeof speedKmh === 'number');
  return splitAtGaps(known).map((piece) => thinPoints(piece.map(({ minute, speedKmh }): Point => [xOf(minute), yOf(speedKmh ?? 0)])));
};

/** The road speeds in their strip under the temperatures, on the same minutes. */
export function warmUpSpeed(pen: Pen, data: WarmUpData, { speed, left, right, xOf, isNarrow }: WarmUpFrame): string {
  if (speed === null) return '';
  const { top, bottom, highKmh } = speed;
  const yOf = linearScale({ low: 0, high: highKmh, start: bottom, end: top + 16 });
  const logs: readonly (readonly [CurveRole, WarmUpLog | null])[] = [
    ['before', data.before],
    ['after', data.after],
  ];
  const drawn = logs.flatMap(([role, log]) => (hasSpeeds(log) ? [{ role, log }] : []));
  const whose = drawn.length === 2 ? 'thin before, thick after' : (drawn[0]?.role ?? '');
  const caption = isNarrow ? 'road speed, km/h' : `road speed in km/h: ${whose}`;
  const marks = [0, highKmh].map((speedKmh) => `M${left} ${coordinate(yOf(speedKmh))}h-8`).join('');
  return pen.part(
    'speed',
    drawn
      .map(({ role, log }) =>
        speedPieces(log, xOf, yOf)
          .map((piece) => pen.polyline(piece, role === 'after' ? { stroke: 'edge', width: 2.6 } : { stroke: 'edge', width: 1.1 }))
          .join(''),
      )
      .join('') +
      pen.path(marks, { stroke: 'ink', width: 1.4 }) +
      pen.text('0', { x: left - 12, y: yOf(0) + 4, sizePx: 13, anchor: 'end', tone: 'ink2' }) +
      pen.text(formatFigure(highKmh, { decimals: 0 }), { x: left - 12, y: yOf(highKmh) + 4, sizePx: 13, anchor: 'end', tone: 'ink2' }) +
      pen.text(caption, { x: right, y: top + 4, sizePx: 14, anchor: 'end', tone: 'ink2' }),
  );
}
