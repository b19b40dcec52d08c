import { coordinate } from '../pen/element.ts';
import { type Pen, type Point } from '../pen/pen.ts';
import { thinPoints } from '../scale/thin-points.ts';
import { type CoolingPoint, type CoolingReading } from './cooling-data.ts';
import { type CoolingFrame } from './cooling-frame.ts';
import { splitAtLimit } from './split-at-limit.ts';

interface LineSpec {
  readonly frame: CoolingFrame;
  readonly limitC: number;
  readonly isMeasured: boolean;
}

/** A line over the clock: solid when measured, broken when estimated, in the ink of its side of the limit. */
export function coolingLine(pen: Pen, points: readonly CoolingPoint[], { frame, limitC, isMeasured }: LineSpec): string {
  const pieces = splitAtLimit(points, limitC).map(({ isOver, points: piece }) => {
    const line = thinPoints(piece.map(({ clockMin, tempC }): Point => [frame.xOf(clockMin), frame.yOf(tempC)]));
    if (line.length < 2) return '';
    return pen.polyline(line, {
      stroke: isOver ? 'hot' : 'cold',
      width: isMeasured ? 3.6 : 2.6,
      ...(isMeasured ? {} : { dash: 'assumed' }),
    });
  });
  return pen.part(isMeasured ? 'measured' : 'estimate', pieces.join(''));
}

const whisker = (pen: Pen, { clockMin, tempC, uncertaintyC = 0 }: CoolingReading, { xOf, yOf }: CoolingFrame): string => {
  const x = xOf(clockMin);
  const [high, low] = [yOf(tempC + uncertaintyC), yOf(tempC - uncertaintyC)];
  if (low - high < 1) return '';
  const cap = (y: number): string => `M${coordinate(x - 5)} ${coordinate(y)}h10`;
  return pen.path(`M${coordinate(x)} ${coordinate(high)}V${coordinate(low)}${cap(high)}${cap(low)}`, { stroke: 'ink', width: 1.6 });
};

/** Every reading as a ring, with what its instrument may be off. */
export function coolingRings(pen: Pen, readings: readonly CoolingReading[], frame: CoolingFrame): string {
  return readings
    .map(
      (reading) =>
        whisker(pen, reading, frame) +
        pen.part('reading', pen.circle([frame.xOf(reading.clockMin), frame.yOf(reading.tempC)], 5, { fill: pen.ground, stroke: 'ink' })),
    )
    .join('');
}
