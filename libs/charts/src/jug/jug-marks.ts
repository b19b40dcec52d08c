import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { scaleTicks } from '../scale/scale-ticks.ts';
import { formatVolume } from '../text/format-volume.ts';
import { type JugShape, JUG } from './jug-shape.ts';

/** Marks closer than this run into one another; then only every second, fifth, tenth … is drawn. */
const CLOSEST_PX = 4.5;

interface JugMarks {
  readonly jugMl: number;
  readonly markMl: number;
}

const drawnMarkMl = ({ jugMl, markMl }: JugMarks): number => {
  const least = (CLOSEST_PX * jugMl) / JUG.scalePx;
  for (let decade = 1; ; decade *= 10) {
    const found = [1, 2, 5].find((times) => markMl * times * decade >= least);
    if (found !== undefined) return markMl * found * decade;
  }
};

/** The volumes at which the jug carries a figure. */
const figuresMl = (jugMl: number): readonly number[] =>
  scaleTicks({ low: 0, high: jugMl, maxCount: 5 }).ticks.filter((volumeMl) => volumeMl > 0);

/** The graduation on a jug's wall: its marks, and longer ones at the volumes that carry figures. */
export function jugMarks(pen: Pen, shape: JugShape, marks: JugMarks): string {
  const stepMl = drawnMarkMl(marks);
  const count = Math.min(200, Math.floor(marks.jugMl / stepMl + 1e-9));
  const tick = (volumeMl: number, length: number): string => {
    const share = volumeMl / marks.jugMl;
    return `M${coordinate(shape.leftAt(share))} ${coordinate(shape.yAt(share))}h${length}`;
  };
  const small = Array.from({ length: count }, (_, index) => tick((index + 1) * stepMl, (index + 1) % 2 === 0 ? 13 : 8));
  return (
    pen.path(small.join(''), { stroke: 'ink', width: 1.25 }) +
    pen.path(
      figuresMl(marks.jugMl)
        .map((volumeMl) => tick(volumeMl, JUG.stripPx - 2))
        .join(''),
      { stroke: 'ink' },
    )
  );
}

/** The figures beside the first jug of a row. */
export function jugFigures(pen: Pen, shape: JugShape, jugMl: number): string {
  return figuresMl(jugMl)
    .map((volumeMl) => {
      const share = volumeMl / jugMl;
      return pen.text(formatVolume(volumeMl / 1000), {
        x: shape.leftAt(share) - 15,
        y: shape.yAt(share) + 4.5,
        sizePx: 13,
        anchor: 'end',
        tone: 'ink2',
      });
    })
    .join('');
}
