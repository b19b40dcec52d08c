import { coordinate } from '../pen/element.ts';
import { type Point } from '../pen/pen.ts';

/** Sizes of one drawn jug in px; its level is linear in the volume, whatever the real jug's taper. */
export const JUG = { bodyPx: 96, scalePx: 190, rimPx: 26, taperPx: 9, stripPx: 23, handlePx: 28, lipPx: 12 } as const;

/** A jug standing with the left end of its base at a point. */
export interface JugShape {
  leftAt(share: number): number;
  rightAt(share: number): number;
  yAt(share: number): number;
  /** The liquid's outline up to a level, right of the graduated strip. */
  liquid(share: number): Point[];
  /** The whole inside up to a level. */
  inside(share: number): Point[];
  readonly wall: string;
  readonly handle: string;
}

const join = (parts: readonly (number | string)[]): string =>
  parts.map((part) => (typeof part === 'number' ? `${coordinate(part)} ` : part)).join('');

/** Lays out one jug; `share` is the level as a share of the jug's size. */
export function jugShape({ x, baseY }: { x: number; baseY: number }): JugShape {
  const leftAt = (share: number): number => x + JUG.taperPx * share;
  const rightAt = (share: number): number => x + JUG.bodyPx - JUG.taperPx * share;
  const yAt = (share: number): number => baseY - JUG.scalePx * share;
  const rim = 1 + JUG.rimPx / JUG.scalePx;
  const strip = (share: number): number => leftAt(share) + JUG.stripPx;
  return {
    leftAt,
    rightAt,
    yAt,
    inside: (share) => [
      [x, baseY],
      [leftAt(share), yAt(share)],
      [rightAt(share), yAt(share)],
      [rightAt(0), baseY],
      [x, baseY],
    ],
    liquid: (share) => [
      [strip(0), baseY],
      [strip(share), yAt(share)],
      [rightAt(share), yAt(share)],
      [rightAt(0), baseY],
      [strip(0), baseY],
    ],
    wall: join([
      'M',
      leftAt(1) - JUG.lipPx,
      yAt(rim),
      'L',
      leftAt(1.06),
      yAt(1.06),
      'L',
      x,
      baseY - 6,
      'q0 6 6 6H',
      rightAt(0) - 6,
      'q6 0 6 -6L',
      rightAt(rim),
      yAt(rim),
    ]),
    handle: join([
      'M',
      rightAt(1),
      yAt(1),
      'q',
      JUG.handlePx,
      4,
      JUG.handlePx - 2,
      42,
      'l',
      -2,
      44,
      'Q',
      rightAt(1) + JUG.handlePx - 6,
      yAt(0.4),
      rightAt(0.4),
      yAt(0.4),
    ]),
  };
}
