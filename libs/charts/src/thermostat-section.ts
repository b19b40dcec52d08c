import { checkInput } from './check-input.ts';
import { type Drawing, type DrawingOptions } from './drawing.ts';
import { coordinate } from './pen/element.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen } from './pen/pen.ts';
import { heightDimension, widthDimension } from './thermostat/dimension.ts';
import { featureTable } from './thermostat/feature-table.ts';
import { checkFeatures, type FeatureMarks, type ThermostatFeatures } from './thermostat/features.ts';
import { sectionBleed, sectionSeal, sealReachPx } from './thermostat/section-seal.ts';
import { sectionFoot, sectionPlates, sectionShape, sectionWorks } from './thermostat/section-shape.ts';
import { thermostatScale, type ThermostatScale } from './thermostat/thermostat-scale.ts';
import { sizeText } from './thermostat/size-text.ts';

/** One thermostat to draw, and what to point out on it. */
export interface ThermostatData {
  /** What it is called, such as 'Removed part'. */
  readonly name: string;
  readonly features: ThermostatFeatures;
  readonly marks?: FeatureMarks;
  /** One scale for several drawings, from `thermostatScale`; without it the part fills its own drawing. */
  readonly scale?: ThermostatScale;
  /** The line 'not to be measured from'; set to false only where the page says it beside. */
  readonly hasCaution?: boolean;
}

const DIAMETER_Y = 26;

/**
 * Draws a thermostat cut through its axis, from its features alone: flange, valve, seal, bleed device, height, by-pass valve, with
 * dimension lines. What is not known is broken and carries a question mark; what is pointed out has its mark and word.
 * It is a picture of the listed features, not a drawing to measure from, and says so.
 *
 * @throws ChartInputError when a dimension is none that a thermostat has.
 */
export function thermostatSection(data: ThermostatData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  const { features, marks = {}, name } = data;
  checkFeatures(features, 'features');
  const scale = data.scale ?? thermostatScale([features], options.widthPx);
  const pen = createPen(options);
  const shape = sectionShape(features, scale);
  const { axisX, flangeY, topY, footY, halfFlange } = shape;
  const reach = sealReachPx(features.sealType, scale.pxPerMm);
  const widestX = axisX + (scale.widestMm * scale.pxPerMm) / 2;
  const body =
    pen.patterns(['cut', 'rubber']) +
    sectionWorks(pen, shape) +
    sectionFoot(pen, shape, features) +
    sectionPlates(pen, shape, features.flangeDiameterMm !== null) +
    sectionSeal(pen, shape, features.sealType) +
    sectionBleed(pen, shape, features.bleedDevice) +
    pen.path(`M${coordinate(axisX)} ${coordinate(topY - 10)}V${coordinate(footY + 9)}`, { stroke: 'edge', width: 1.3, dash: 'limit' }) +
    widthDimension(pen, {
      from: axisX - halfFlange,
      to: axisX + halfFlange,
      at: DIAMETER_Y,
      fromEdge: flangeY - reach,
      toEdge: flangeY - reach,
      isKnown: features.flangeDiameterMm !== null,
      text: `Ø ${sizeText(features.flangeDiameterMm)}`,
      mark: marks.flangeDiameterMm,
    }) +
    heightDimension(pen, {
      from: topY,
      to: footY,
      at: widestX + 24,
      fromEdge: axisX + 4 * scale.pxPerMm,
      toEdge: axisX + (features.hasBypassValve === false ? 2 : 14 * scale.pxPerMm),
      isKnown: features.heightMm !== null,
      text: sizeText(features.heightMm),
      mark: marks.heightMm,
    }) +
    (data.hasCaution === false ? '' : pen.text('not to be measured from', { x: 0, y: scale.footY + 28, sizePx: 13, tone: 'ink2' }));
  return finishDrawing(
    {
      title: `${name}: section`,
      description: `Drawn from its features, not to be measured from. ${featureTable(data)
        .rows.map((row) => row.filter((cell) => cell !== '').join(' '))
        .join('; ')}`,
      table: featureTable(data),
      heightPx: scale.footY + (data.hasCaution === false ? 14 : 34),
      body,
    },
    options,
  );
}
