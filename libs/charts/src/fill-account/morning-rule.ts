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

/** How high the rule stands. */
export const MORNING_RULE_PX = 122;

/**
 * What the system took next morning on a rule of its own: a top-up is a hair on the scale of the whole system, and the limit for it
 * is what tells trapped air from a leak.
 */
export function morningRule(
  pen: Pen,
  { nextMorning, morningLimitL, morningVerdict }: FillAccountData,
  { x, y, widthPx }: { x: number; y: number; widthPx: number },
): string {
  const limitMl = morningLimitL * 1000;
  const tookMl = nextMorning === null ? null : nextMorning.volumeL * 1000;
  const highMl = Math.max(limitMl * 2, (tookMl ?? 0) * 1.15, 100);
  const [left, right] = [x + INSET_PX, x + widthPx - INSET_PX];
  const xOf = linearScale({ low: 0, high: highMl, start: left, end: right });
  const { ticks, minorTicks } = scaleTicks({ low: 0, high: highMl, maxCount: widthPx / 75 });
  const band: Box = { x: left, y: y + 56, width: xOf(limitMl) - left, height: 18 };
  const edge = band.y + band.height;
  const head = `Next morning: ${tookMl === null ? 'not read yet' : `${nextMorning?.isAbout === true ? 'about ' : ''}${formatFigure(tookMl, { decimals: 0 })} mL`}`;
  const headType = { sizePx: 18, face: 'sign', weight: 800 } as const;
  const above = 'look for a leak';
  const aboveFits = textWidth(above, TYPE) < right - xOf(limitMl);
  const belowFits = textWidth('settled', TYPE) + 4 < xOf(limitMl) - left;
  const level =
    tookMl === null ? '' : pen.part('took', pen.rect({ x: left, y: band.y + 4, width: xOf(tookMl) - left, height: 10 }, { fill: 'ink' }));
  return (
    pen.text(head, { ...headType, x, y: y + 16 }) +
    (morningVerdict === undefined ? '' : peg(pen, morningVerdict, { centre: [x + textWidth(head, headType) + 18, y + 10], radiusPx: 9 })) +
    pen.rect(band, { fill: 'sheet', stroke: 'fits' }) +
    pen.rect({ x: xOf(limitMl), y: band.y, width: right - xOf(limitMl), height: band.height }, { pattern: pen.id('late'), stroke: 'no' }) +
    level +
    (belowFits ? pen.text('settled', { ...TYPE, x: left, y: band.y - 9, tone: 'fits' }) : '') +
    (aboveFits ? pen.text(above, { ...TYPE, x: right, y: band.y - 9, anchor: 'end', tone: 'no' }) : '') +
    pen.path(`M${left} ${edge}H${right}`, { stroke: 'ink' }) +
    horizontalGraduation(pen, {
      at: edge,
      place: xOf,
      ticks,
      minorTicks,
      label: (volumeMl) => formatFigure(volumeMl, { decimals: 0 }),
      sizePx: 14,
    }) +
    pen.path(`M${coordinate(xOf(limitMl))} ${band.y - 8}V${edge + 14}`, { stroke: 'ink', dash: 'limit' }) +
    pen.text('mL', { x: right, y: edge + 44, sizePx: 14, anchor: 'end', tone: 'ink2' })
  );
}
