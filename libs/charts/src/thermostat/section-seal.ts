import { coordinate } from '../pen/element.ts';
import { type Pen } from '../pen/pen.ts';
import { type Paint } from '../pen/paint.ts';
import { type BleedDevice, type SealType } from './features.ts';
import { type SectionShape } from './section-shape.ts';

const at = (...numbers: readonly number[]): string => numbers.map(coordinate).join(' ');

const oRing = (pen: Pen, { axisX, pxPerMm, flangeY, halfFlange }: SectionShape, paint: Paint): string => {
  const radius = 2.1 * pxPerMm;
  return [-1, 1].map((side) => pen.circle([axisX + side * (halfFlange - radius), flangeY - radius], radius, paint)).join('');
};

const flatGasket = (pen: Pen, { axisX, pxPerMm, flangeY, halfFlange, halfValve }: SectionShape, paint: Paint): string => {
  const height = 2 * pxPerMm;
  const inner = Math.min(halfValve + 2.6 * pxPerMm, halfFlange - pxPerMm);
  return [-1, 1]
    .map((side) => pen.path(`M${at(axisX + side * halfFlange, flangeY)}v${at(-height)}H${at(axisX + side * inner)}v${at(height)}z`, paint))
    .join('');
};

const mouldedRim = (pen: Pen, { axisX, pxPerMm: mm, flangeY, flangePx, halfFlange }: SectionShape, paint: Paint): string => {
  const [lip, over, reach] = [3.4 * mm, 2.6 * mm, 3 * mm];
  return [-1, 1]
    .map((side) => {
      const inner = axisX + side * (halfFlange - lip);
      const edge = axisX + side * halfFlange;
      const outer = axisX + side * (halfFlange + reach);
      const round = side * over;
      return pen.path(
        `M${at(inner, flangeY - over)}H${at(outer - round)}q${at(round, 0, round, over)}v${at(flangePx)}q${at(0, over, -round, over)}H${at(inner)}v${at(-over)}H${at(edge)}v${at(-flangePx)}H${at(inner)}z`,
        paint,
      );
    })
    .join('');
};

const SEALS: Readonly<Record<SealType, typeof oRing>> = { 'o-ring': oRing, 'flat-gasket': flatGasket, 'moulded-rim': mouldedRim };

/** The seal cut through on both sides; not known, a broken ring stands where one would lie. */
export function sectionSeal(pen: Pen, shape: SectionShape, sealType: SealType | null): string {
  if (sealType === null) return pen.part('seal', oRing(pen, shape, { stroke: 'edge', width: 1.6, dash: 'fine' }));
  return pen.part('seal', SEALS[sealType](pen, shape, { pattern: pen.id('rubber'), stroke: 'ink' }));
}

/** How far the seal reaches out beyond the flange. */
export function sealReachPx(sealType: SealType | null, pxPerMm: number): number {
  return sealType === 'moulded-rim' ? 3 * pxPerMm : 0;
}

/** How far from the axis the bleed device sits: clear of the valve and of the seal. */
export function bleedRadiusPx(halfValve: number, halfFlange: number): number {
  return halfValve + (halfFlange - halfValve) * 0.43;
}

/** The bleed device in the left half of the flange, between valve and seal. */
export function sectionBleed(pen: Pen, shape: SectionShape, bleedDevice: BleedDevice | null): string {
  if (bleedDevice === 'none') return '';
  const { axisX, pxPerMm: mm, flangeY, flangePx, halfFlange, halfValve } = shape;
  const x = axisX - bleedRadiusPx(halfValve, halfFlange);
  const half = 1.3 * mm;
  if (bleedDevice === null) {
    return pen.part(
      'bleed',
      pen.path(`M${at(x - half, flangeY - 4)}v${at(flangePx + 8)}M${at(x + half, flangeY - 4)}v${at(flangePx + 8)}`, {
        stroke: 'edge',
        width: 1.6,
        dash: 'fine',
      }),
    );
  }
  const hole =
    pen.rect({ x: x - half, y: flangeY - 1, width: half * 2, height: flangePx + 2 }, { fill: pen.ground }) +
    pen.path(`M${at(x - half, flangeY)}v${at(flangePx)}M${at(x + half, flangeY)}v${at(flangePx)}`, { stroke: 'ink' });
  if (bleedDevice === 'plain-hole') return pen.part('bleed', hole);
  const [ball, foot] = [flangeY - 4.6 * mm, flangeY + flangePx + 4 * mm];
  return pen.part(
    'bleed',
    hole +
      pen.path(`M${at(x, ball)}V${at(foot)}`, { stroke: 'ink', width: 2.6 }) +
      pen.circle([x, ball], 1.3 * mm, { fill: 'ink' }) +
      pen.path(`M${at(x - 1.7 * mm, foot)}h${at(3.4 * mm)}`, { stroke: 'ink', width: 4 }),
  );
}
