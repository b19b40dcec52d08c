import { type Verdict } from '../drawing.ts';
import { type Pen, type Point } from '../pen/pen.ts';
import { type Tone } from '../pen/tones.ts';

/** What each verdict mark is called beside it. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  fits: 'fits',
  'does-not': 'does not',
  unsure: 'unsure',
  'not-read': 'not read',
};

/** The ink that repeats a verdict. */
const VERDICT_TONES: Readonly<Record<Verdict, Tone>> = { fits: 'fits', 'does-not': 'no', unsure: 'unsure', 'not-read': 'ink2' };

/**
 * Draws the verdict mark: a round peg in its hole fits, a square one does not, half a peg is unsure, an empty broken hole is not read.
 */
export function peg(pen: Pen, verdict: Verdict, { centre, radiusPx }: { centre: Point; radiusPx: number }): string {
  const [x, y] = centre;
  const tone = VERDICT_TONES[verdict];
  const width = Math.max(1.6, radiusPx / 5.5);
  const hole = pen.circle(centre, radiusPx, { fill: 'sheet', stroke: tone, width });
  switch (verdict) {
    case 'fits':
      return hole + pen.circle(centre, radiusPx * 0.64, { fill: tone });
    case 'does-not':
      return (
        pen.rect({ x: x - radiusPx, y: y - radiusPx, width: radiusPx * 2, height: radiusPx * 2 }, { fill: tone }) +
        pen.circle(centre, radiusPx * 0.56, { stroke: 'sheet', width })
      );
    case 'unsure':
      return (
        hole + pen.path(`M${x} ${y - radiusPx * 0.64}a${radiusPx * 0.64} ${radiusPx * 0.64} 0 0 0 0 ${radiusPx * 1.28}z`, { fill: tone })
      );
    case 'not-read':
      return pen.circle(centre, radiusPx, { stroke: tone, width, dash: 'fine' });
  }
}
