import { checkInput } from './check-input.ts';
import { type Drawing, type DrawingOptions } from './drawing.ts';
import { peg } from './marks/peg.ts';
import { coordinate } from './pen/element.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Pen, type Point } from './pen/pen.ts';
import { type Paint } from './pen/paint.ts';
import { widthDimension } from './thermostat/dimension.ts';
import { featureTable } from './thermostat/feature-table.ts';
import { checkFeatures, MARK_WORDS, type FeatureMark, type ThermostatFeatures } from './thermostat/features.ts';
import { bleedRadiusPx } from './thermostat/section-seal.ts';
import { sectionShape } from './thermostat/section-shape.ts';
import { thermostatScale } from './thermostat/thermostat-scale.ts';
import { type ThermostatData } from './thermostat-section.ts';
import { fitText } from './text/fit-text.ts';
import { sizeText } from './thermostat/size-text.ts';

const TOP_PX = 22;
const LINE_PX = 20;

interface PlanShape {
  readonly centre: Point;
  readonly mm: number;
  readonly flange: number;
  readonly valve: number;
}

const RUBBER = (pen: Pen): Paint => ({ pattern: pen.id('rubber'), stroke: 'ink' });
const METAL: Paint = { fill: 'sheet', stroke: 'ink' };

const sealRing = (pen: Pen, { centre, mm, flange, valve }: PlanShape, { sealType, flangeDiameterMm }: ThermostatFeatures): string => {
  const edge: Paint = flangeDiameterMm === null ? { ...METAL, dash: 'assumed' } : METAL;
  const ring = (outer: number, inner: number): string =>
    pen.part('seal', pen.circle(centre, outer, RUBBER(pen)) + pen.circle(centre, inner, { fill: 'sheet', stroke: 'ink', width: 1.3 }));
  switch (sealType) {
    case 'moulded-rim':
      return ring(flange + 3 * mm, flange - 3.4 * mm);
    case 'flat-gasket':
      return ring(flange, Math.min(valve + 2.6 * mm, flange - mm));
    case 'o-ring':
      return pen.circle(centre, flange, edge) + ring(flange - 1, flange - 4.2 * mm);
    case null:
      return (
        pen.circle(centre, flange, edge) +
        pen.part('seal', pen.circle(centre, flange - 4.2 * mm, { stroke: 'edge', width: 1.6, dash: 'fine' }))
      );
  }
};

const valveAndBridge = (pen: Pen, { centre, mm, valve }: PlanShape, isKnown: boolean): string => {
  const [x, y] = centre;
  return (
    pen.circle(centre, valve, isKnown ? METAL : { ...METAL, dash: 'assumed' }) +
    pen.rect({ x: x - valve - 1.6 * mm, y: y - 2.2 * mm, width: (valve + 1.6 * mm) * 2, height: 4.4 * mm }, METAL) +
    pen.circle(centre, 3.4 * mm, METAL)
  );
};

const BOXES: Readonly<Record<FeatureMark, Paint>> = {
  fits: { stroke: 'fits' },
  'does-not': { stroke: 'no', width: 3 },
  unsure: { stroke: 'unsure' },
  'not-read': { stroke: 'ink2', dash: 'fine' },
  next: { fill: 'lamp', stroke: 'on-lamp' },
};

const bleedMark = (
  pen: Pen,
  { centre, mm, flange, valve }: PlanShape,
  { device, mark }: { device: ThermostatFeatures['bleedDevice']; mark: FeatureMark | undefined },
): string => {
  if (device === 'none' && mark === undefined) return '';
  const at: Point = [centre[0], centre[1] - bleedRadiusPx(valve, flange)];
  const half = 4.2 * mm;
  const box =
    mark === undefined
      ? ''
      : pen.part(
          'marked',
          pen.rect({ x: at[0] - half, y: at[1] - half, width: half * 2, height: half * 2 }, { fill: 'sheet', ...BOXES[mark] }),
        );
  if (device === 'none') return box;
  if (device === null)
    return pen.part('bleed', box + pen.circle(at, 2.2 * mm, { stroke: mark === 'next' ? 'on-lamp' : 'edge', width: 1.6, dash: 'fine' }));
  const hole = pen.circle(at, 2 * mm, METAL);
  return pen.part('bleed', box + hole + (device === 'jiggle-pin' ? pen.circle(at, 1 * mm, { fill: 'ink' }) : ''));
};

const caption = (
  pen: Pen,
  { words, mark, y, widthPx }: { words: string; mark: FeatureMark | undefined; y: number; widthPx: number },
): string => {
  const type = { sizePx: 14, weight: mark === undefined ? 400 : 700 } as const;
  if (mark === undefined) return pen.text(fitText(words, { ...type, maxWidthPx: widthPx }), { ...type, x: 0, y, tone: 'ink2' });
  const sign =
    mark === 'next'
      ? pen.circle([7, y - 4.5], 6.5, { fill: 'lamp', stroke: 'on-lamp', dash: 'fine' })
      : peg(pen, mark, { centre: [7, y - 4.5], radiusPx: 6.5 });
  return sign + pen.text(fitText(`${words}, ${MARK_WORDS[mark]}`, { ...type, maxWidthPx: widthPx - 20 }), { ...type, x: 20, y });
};

/**
 * Draws a thermostat seen from above, to the same scale and on the same axis as its section: flange, seal, valve, bridge, bleed device,
 * the valve's diameter, and in words how it seals, bleeds and by-passes. What is not known is broken with a question mark.
 *
 * @throws ChartInputError when a dimension is none that a thermostat has.
 */
export function thermostatPlan(data: ThermostatData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  const { features, marks = {}, name } = data;
  checkFeatures(features, 'features');
  const scale = data.scale ?? thermostatScale([features], options.widthPx);
  const pen = createPen(options);
  const { halfFlange: flange, halfValve: valve, pxPerMm: mm, axisX } = sectionShape(features, scale);
  const reach = (scale.widestMm / 2 + 3) * mm;
  const centreY = TOP_PX + reach;
  const shape: PlanShape = { centre: [axisX, centreY], mm, flange, valve };
  const dimensionY = centreY + reach + 34;
  const table = featureTable(data);
  const valueOf = (feature: string): string => table.rows.find((row) => row[0] === feature)?.[1]?.replace('not known', '?') ?? '?';
  const firstLine = dimensionY + 44;
  const lines = [
    { words: `seal: ${valueOf('seal')}`, mark: marks.sealType },
    { words: `bleed: ${valueOf('bleed device')}`, mark: marks.bleedDevice },
    { words: `by-pass valve: ${valueOf('by-pass valve')}`, mark: marks.hasBypassValve },
  ];
  const caution = data.hasCaution === false ? [] : [{ words: 'not to be measured from', mark: undefined }];
  const axes = `M${coordinate(axisX - reach - 8)} ${coordinate(centreY)}h${coordinate(reach * 2 + 16)}M${coordinate(axisX)} ${coordinate(centreY - reach - 8)}v${coordinate(reach * 2 + 16)}`;
  const body =
    pen.patterns(['rubber']) +
    sealRing(pen, shape, features) +
    valveAndBridge(pen, shape, features.valveDiameterMm !== null) +
    pen.path(axes, { stroke: 'edge', width: 1.1, dash: 'limit' }) +
    bleedMark(pen, shape, { device: features.bleedDevice, mark: marks.bleedDevice }) +
    widthDimension(pen, {
      from: axisX - valve,
      to: axisX + valve,
      at: dimensionY,
      fromEdge: centreY,
      toEdge: centreY,
      isKnown: features.valveDiameterMm !== null,
      text: `Ø ${sizeText(features.valveDiameterMm)}`,
      mark: marks.valveDiameterMm,
    }) +
    [...lines, ...caution]
      .map((line, index) => caption(pen, { ...line, y: firstLine + index * LINE_PX, widthPx: options.widthPx }))
      .join('');
  return finishDrawing(
    {
      title: `${name}: plan`,
      description: `Seen from above, drawn from its features, not to be measured from. ${lines.map(({ words }) => words).join('; ')}`,
      table,
      heightPx: firstLine + (lines.length + caution.length - 1) * LINE_PX + 8,
      body,
    },
    options,
  );
}
