import { coordinate } from '../pen/element.ts';
import { type Pen, type Point } from '../pen/pen.ts';
import { type Paint } from '../pen/paint.ts';
import { thinPoints } from '../scale/thin-points.ts';
import { splitAtGaps } from './split-at-gaps.ts';
import { type WarmUpKnee, type WarmUpLog } from './warm-up-data.ts';
import { type WarmUpFrame } from './warm-up-frame.ts';

/** Told apart without colour: after is thick, before is thin and carries rings. */
export type CurveRole = 'before' | 'after';

const PAINTS: Readonly<Record<CurveRole, Paint>> = {
  before: { stroke: 'ink', width: 'stroke' },
  after: { stroke: 'green', width: 'wall' },
};
const RING_EVERY_PX = 46;
const RING_PX = 4.5;

/** One log in px, cut at its gaps and thinned. */
export function curvePieces(log: WarmUpLog, { xOf, yOf }: WarmUpFrame): Point[][] {
  return splitAtGaps(log.samples).map((piece) => thinPoints(piece.map(({ minute, tempC }): Point => [xOf(minute), yOf(tempC)])));
}

const bridges = (pieces: readonly (readonly Point[])[]): Point[][] =>
  pieces.slice(1).flatMap((piece, index) => {
    const [from, to] = [pieces[index]?.at(-1), piece[0]];
    return from === undefined || to === undefined ? [] : [[from, to]];
  });

const rings = (pen: Pen, points: readonly Point[]): string => {
  let next = (points[0]?.[0] ?? 0) + RING_EVERY_PX / 2;
  return points
    .map((point) => {
      if (point[0] < next) return '';
      next = point[0] + RING_EVERY_PX;
      return pen.circle(point, RING_PX, { fill: pen.ground, stroke: 'ink' });
    })
    .join('');
};

interface CurveSpec {
  readonly role: CurveRole;
  readonly frame: WarmUpFrame;
  /** From `curvePieces`. */
  readonly pieces: readonly (readonly Point[])[];
}

/** Draws one log: measured pieces solid, the gaps between them broken, the fitted line over it. */
export function warmUpCurve(pen: Pen, fitted: WarmUpLog['fit'], { role, frame, pieces }: CurveSpec): string {
  const paint = PAINTS[role];
  const fit = (fitted ?? []).map(({ minute, tempC }): Point => [frame.xOf(minute), frame.yOf(tempC)]);
  const lone = pieces.flatMap((piece) => (piece.length === 1 ? piece : []));
  return pen.part(
    role,
    pieces.map((piece) => (piece.length > 1 ? pen.polyline(piece, paint) : '')).join('') +
      lone.map((point) => pen.circle(point, 3, { fill: role === 'after' ? 'green' : 'ink' })).join('') +
      bridges(pieces)
        .map((bridge) => pen.polyline(bridge, { ...paint, width: 2, dash: 'assumed' }))
        .join('') +
      (role === 'before' ? pieces.map((piece) => rings(pen, piece)).join('') : '') +
      (fit.length > 1
        ? pen.part(
            'fit',
            pen.polyline(fit, { stroke: pen.ground, width: 3.5 }) + pen.polyline(fit, { stroke: 'ink', width: 1.8, dash: 'assumed' }),
          )
        : ''),
  );
}

/** The bend with its interval, and the line up to its label. */
export function warmUpKnee(
  pen: Pen,
  knee: WarmUpKnee,
  { frame, labelY, role }: { frame: WarmUpFrame; labelY: number; role: CurveRole },
): string {
  const x = frame.xOf(knee.minute);
  const [high, low] = [frame.yOf(knee.tempC + knee.halfWidthC), frame.yOf(knee.tempC - knee.halfWidthC)];
  const cap = (y: number): string => `M${coordinate(x - 9)} ${coordinate(y)}h18`;
  return pen.part(
    'knee',
    pen.path(`M${coordinate(x)} ${coordinate(labelY)}V${coordinate(frame.yOf(knee.tempC))}`, { stroke: 'ink', width: 1.4 }) +
      pen.path(`M${coordinate(x)} ${coordinate(high)}V${coordinate(low)}${cap(high)}${cap(low)}`, { stroke: 'ink', width: 2.4 }) +
      pen.circle([x, frame.yOf(knee.tempC)], 7.5, {
        fill: role === 'after' ? 'lamp' : pen.ground,
        stroke: role === 'after' ? 'on-lamp' : 'ink',
        width: 2.6,
      }),
  );
}
