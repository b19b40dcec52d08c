import { coordinate } from '../pen/element.ts';
import { type Box, type Pen } from '../pen/pen.ts';
import { type Paint } from '../pen/paint.ts';
import { type ThermostatFeatures } from './features.ts';
import { ASSUMED_MM, bridgeMm, type ThermostatScale } from './thermostat-scale.ts';

/** All px the section needs, worked out once from the features and the scale. */
export interface SectionShape {
  readonly axisX: number;
  readonly pxPerMm: number;
  readonly topY: number;
  readonly flangeY: number;
  readonly flangePx: number;
  readonly footY: number;
  readonly halfFlange: number;
  readonly halfValve: number;
}

const FLANGE_MM = 2.2;
/** A valve that leaves no flange can't be drawn; the figure beside it still says what was entered. */
const WIDEST_VALVE_SHARE = 0.84;

/** Works out where everything lies. */
export function sectionShape(features: ThermostatFeatures, scale: ThermostatScale): SectionShape {
  const { pxPerMm, axisX, flangeY } = scale;
  const flangeMm = features.flangeDiameterMm ?? ASSUMED_MM.flangeDiameterMm;
  const heightMm = features.heightMm ?? ASSUMED_MM.heightMm;
  const valveMm = Math.min(features.valveDiameterMm ?? flangeMm * ASSUMED_MM.valveShare, flangeMm * WIDEST_VALVE_SHARE);
  const topY = flangeY - bridgeMm(heightMm) * pxPerMm;
  return {
    axisX,
    pxPerMm,
    topY,
    flangeY,
    flangePx: FLANGE_MM * pxPerMm,
    footY: topY + heightMm * pxPerMm,
    halfFlange: (flangeMm * pxPerMm) / 2,
    halfValve: (valveMm * pxPerMm) / 2,
  };
}

const at = (...numbers: readonly number[]): string => numbers.map(coordinate).join(' ');

/** A bent strip of sheet metal: a thick line with a lighter core. */
const strip = (pen: Pen, d: string, px: number): string =>
  pen.path(d, { stroke: 'ink', width: px }) + pen.path(d, { stroke: 'sheet', width: px - 3.5 });

const SOLID: Paint = { fill: 'sheet', stroke: 'ink' };

/** Bridge above the flange, cage below, spring and wax element between them. */
export function sectionWorks(pen: Pen, shape: SectionShape): string {
  const { axisX: x, pxPerMm: mm, topY, flangeY, flangePx, footY, halfValve } = shape;
  const below = footY - flangeY;
  const seat = halfValve + 2.2 * mm;
  const cage = halfValve + 1.4 * mm;
  const [shoulderY, floorY, elementY] = [flangeY + below * 0.62, flangeY + below * 0.72, flangeY + below * 0.635];
  const turns = 5;
  const springTop = flangeY + flangePx + 3;
  const springStep = (elementY - springTop) / (turns * 2);
  const springSide = (index: number): number => halfValve * (0.8 - index * 0.012);
  const spring = Array.from(
    { length: turns * 2 + 1 },
    (_, index) => `${index === 0 ? 'M' : 'L'}${at(x + (index % 2 === 0 ? -1 : 1) * springSide(index), springTop + index * springStep)}`,
  ).join('');
  const element: Box = { x: x - 6.4 * mm, y: flangeY + 1, width: 12.8 * mm, height: elementY - flangeY };
  return (
    strip(pen, `M${at(x - seat, flangeY)}L${at(x - 3.4 * mm, topY + 2)}h${at(6.8 * mm)}L${at(x + seat, flangeY)}`, 5.5) +
    strip(
      pen,
      `M${at(x - cage, flangeY + flangePx)}V${at(shoulderY)}L${at(x - 4.5 * mm, floorY)}H${at(x + 4.5 * mm)}L${at(x + cage, shoulderY)}V${at(flangeY + flangePx)}`,
      6,
    ) +
    pen.path(spring, { stroke: 'edge', width: 2.4 }) +
    pen.rect(element, { ...SOLID, radius: 4 }) +
    pen.rect(
      { x: element.x + 1.9 * mm, y: element.y + element.height * 0.28, width: element.width - 3.8 * mm, height: element.height * 0.58 },
      { fill: 'dim', stroke: 'ink', width: 1.4 },
    ) +
    pen.rect(
      { x: x - 1.1 * mm, y: topY + 3, width: 2.2 * mm, height: flangeY - topY + element.height * 0.42 },
      { fill: 'sheet', stroke: 'ink', width: 1.6 },
    ) +
    pen.rect({ x: x - 3 * mm, y: topY, width: 6 * mm, height: 3.4 * mm }, SOLID)
  );
}

/** The valve plate and the cut flange. */
export function sectionPlates(
  pen: Pen,
  { axisX: x, pxPerMm: mm, flangeY, flangePx, halfFlange, halfValve }: SectionShape,
  isKnown: boolean,
): string {
  const inner = 6.4 * mm;
  const bevel = flangePx;
  const cut = { pattern: pen.id('cut'), stroke: 'ink' } as const;
  const flangeCut: Paint = isKnown ? cut : { ...cut, dash: 'assumed' };
  const plate = (side: 1 | -1): string =>
    `M${at(x + side * halfValve, flangeY + 1)}H${at(x + side * inner)}v${at(flangePx)}H${at(x + side * (halfValve - bevel))}z`;
  const flange = (side: 1 | -1): string =>
    `M${at(x + side * (halfValve + 1), flangeY)}H${at(x + side * halfFlange)}v${at(flangePx)}H${at(x + side * (halfValve + 1 - bevel * 0.85))}z`;
  return [plate(-1), plate(1)].map((d) => pen.path(d, cut)).join('') + [flange(-1), flange(1)].map((d) => pen.path(d, flangeCut)).join('');
}

/** The stem below, with the by-pass valve's plate where there is one. */
export function sectionFoot(pen: Pen, shape: SectionShape, { hasBypassValve, heightMm }: ThermostatFeatures): string {
  const { axisX: x, pxPerMm: mm, flangeY, footY } = shape;
  const stem = pen.path(`M${at(x, flangeY + (footY - flangeY) * 0.66)}V${at(footY - 1)}`, {
    stroke: 'ink',
    width: 5,
    ...(heightMm === null ? { dash: 'fine' } : {}),
  });
  if (hasBypassValve === false) return stem;
  const plate: Box = { x: x - 14 * mm, y: footY - flangeThickness(shape), width: 28 * mm, height: flangeThickness(shape) };
  const isKnown = hasBypassValve === true && heightMm !== null;
  return (
    stem +
    pen.part(
      'bypass',
      pen.rect(plate, isKnown ? { pattern: pen.id('cut'), stroke: 'ink' } : { fill: 'sheet', stroke: 'ink', dash: 'assumed' }),
    )
  );
}

const flangeThickness = ({ flangePx }: SectionShape): number => Math.max(5, flangePx);
