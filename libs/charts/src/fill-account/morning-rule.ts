import { horizontalGraduation } from '../marks/graduation.ts';
import { peg } from '../marks/peg.ts';
import { coordinate } from '../pen/element.ts';
import { type Box, type Pen } from '../pen/pen.ts';
import { linearScale } from '../scale/linear-scale.ts';
import { scaleTicks } from '../scale/scale-ticks.ts';
import { formatFigure } from '../text/format-figure.ts';
import { textWidth } from '../text/text-width.ts';
import { type FillAccountData } from './fill-account-data.ts';

const INSET_PX = 14;
const TYPE = { sizePx: 15, weight: 600 } as const;

/** A top-up is small: ruled in millilitres, or in parts of a quart. */
const RULED = {
  L: { perUnit: 1000, word: 'mL', decimals: 0, least: 100 },
  'US qt': { perUnit: 1, word: 'US qt', decimals: 2, least: 0.1 },
} as const;

/** How high the rule stands. */
export const MORNING_RULE_PX = 122;

/**
 * What the system took next morning on a rule of its own: a top-up is a hair on the scale of the whole system, and the limit for it
 * is what tells trapped air from a leak.
 */
export function morningRule(
  pen: Pen,
  { nextMorning, morningLimitL, morningVerdict, unit = 'L' }: FillAccountData,
  { x, y, widthPx }: { x: number; y: number; widthPx: number },
): string {
  const { perUnit, word, decimals, least } = RULED[unit];
  const limit = morningLimitL * perUnit;
  const took = nextMorning === null ? null : nextMorning.volumeL * perUnit;
  const high = Math.max(limit * 2, (took ?? 0) * 1.15, least);
  const [left, right] = [x + INSET_PX, x + widthPx - INSET_PX];
  const xOf = linearScale({ low: 0, high: high, start: left, end: right });
  const { ticks, minorTicks } = scaleTicks({ low: 0, high: high, maxCount: widthPx / 75 });
  const band: Box = { x: left, y: y + 56, width: xOf(limit) - left, height: 18 };
  const edge = band.y + band.height;
  const head = `Next morning: ${took === null ? 'not read yet' : `${nextMorning?.isAbout === true ? 'about ' : ''}${formatFigure(took, { decimals })} ${word}`}`;
  const headType = { sizePx: 18, face: 'sign', weight: 800 } as const;
  const above = 'look for a leak';
  const aboveFits = textWidth(above, TYPE) < right - xOf(limit);
  const belowFits = textWidth('settled', TYPE) + 4 < xOf(limit) - left;
  const level =
    took === null ? '' : pen.part('took', pen.rect({ x: left, y: band.y + 4, width: xOf(took) - left, height: 10 }, { fill: 'ink' }));
  return (
    pen.text(head, { ...headType, x, y: y + 16 }) +
    (morningVerdict === undefined ? '' : peg(pen, morningVerdict, { centre: [x + textWidth(head, headType) + 18, y + 10], radiusPx: 9 })) +
    pen.rect(band, { fill: 'sheet', stroke: 'fits' }) +
    pen.rect({ x: xOf(limit), y: band.y, width: right - xOf(limit), height: band.height }, { pattern: pen.id('late'), stroke: 'no' }) +
    level +
    (belowFits ? pen.text('settled', { ...TYPE, x: left, y: band.y - 9, tone: 'fits' }) : '') +
    (aboveFits ? pen.text(above, { ...TYPE, x: right, y: band.y - 9, anchor: 'end', tone: 'no' }) : '') +
    pen.path(`M${left} ${edge}H${right}`, { stroke: 'ink' }) +
    horizontalGraduation(pen, {
      at: edge,
      place: xOf,
      ticks,
      minorTicks,
      label: (volume) => formatFigure(volume, { decimals }),
      sizePx: 14,
    }) +
    pen.path(`M${coordinate(xOf(limit))} ${band.y - 8}V${edge + 14}`, { stroke: 'ink', dash: 'limit' }) +
    pen.text(word, { x: right, y: edge + 44, sizePx: 14, anchor: 'end', tone: 'ink2' })
  );
}
