import { checkInput } from './check-input.ts';
import { checkNotNegative } from './check-not-negative.ts';
import { type Drawing, type DrawingOptions } from './drawing.ts';
import { horizontalGraduation } from './marks/graduation.ts';
import { coordinate } from './pen/element.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Pen } from './pen/pen.ts';
import { linearScale } from './scale/linear-scale.ts';
import { formatFigure } from './text/format-figure.ts';
import { textWidth } from './text/text-width.ts';

/** One temperature reading against the most at which the system may be opened. */
export interface ReadingRuleData {
  readonly limitC: number;
  /** Null draws a dashed example. */
  readonly reading: { readonly tempC: number; readonly uncertaintyC: number } | null;
  /** Words over the two zones; defaults: 'cold enough' and 'too hot to open'. */
  readonly belowText?: string;
  readonly aboveText?: string;
}

const LOW_C = 10;
const HIGH_C = 70;
const EXAMPLE = { tempC: 38, uncertaintyC: 2 };
const INSET_PX = 12;
const BAND = { top: 38, height: 20 };
const EDGE_Y = BAND.top + BAND.height;
const READING = { top: BAND.top - 4, height: BAND.height + 8 };
const HEIGHT_PX = 94;
const TYPE_PX = 16;

type Place = (tempC: number) => number;

const zoneWords = (data: ReadingRuleData) => ({ below: data.belowText ?? 'cold enough', above: data.aboveText ?? 'too hot to open' });

const figure = ({ tempC, uncertaintyC }: { tempC: number; uncertaintyC: number }): string =>
  `${formatFigure(tempC)} ± ${formatFigure(uncertaintyC)}`;

const says = ({ reading, limitC }: ReadingRuleData): string => {
  const limit = formatFigure(limitC);
  if (reading === null) return `No reading yet. The top limit is ${limit} °C.`;
  const low = reading.tempC - reading.uncertaintyC;
  const high = reading.tempC + reading.uncertaintyC;
  const place = high <= limitC ? 'all of it at or under' : low > limitC ? 'all of it over' : 'which reaches across';
  return `${figure(reading)} °C covers ${formatFigure(low)} to ${formatFigure(high)} °C, ${place} the limit of ${limit} °C.`;
};

const onRule = (tempC: number): number => Math.max(LOW_C, Math.min(HIGH_C, tempC));

const zones = (pen: Pen, data: ReadingRuleData, xOf: Place): string => {
  const [left, limit, right] = [xOf(LOW_C), xOf(onRule(data.limitC)), xOf(HIGH_C)];
  const { below, above } = zoneWords(data);
  const { top: y, height } = BAND;
  const word = { y: y - 14, sizePx: right - left > 400 ? TYPE_PX : 14, weight: 600 } as const;
  return (
    pen.rect({ x: left, y, width: limit - left, height }, { fill: 'sheet', stroke: 'fits' }) +
    pen.part('zone', pen.rect({ x: limit, y, width: right - limit, height }, { pattern: pen.id('too-hot'), stroke: 'hot' })) +
    pen.text(below, { ...word, x: left, tone: 'fits' }) +
    pen.text(above, { ...word, x: right, anchor: 'end', tone: 'hot' })
  );
};

const limitLine = (pen: Pen, data: ReadingRuleData, xOf: Place): string => {
  if (data.limitC !== onRule(data.limitC)) return '';
  const { below, above } = zoneWords(data);
  const x = xOf(data.limitC);
  const reach = {
    start: xOf(LOW_C) + textWidth(below, { sizePx: TYPE_PX }) + 4,
    end: xOf(HIGH_C) - textWidth(above, { sizePx: TYPE_PX }) - 4,
  };
  const top = x > reach.start && x < reach.end ? BAND.top - 26 : BAND.top - 9;
  return pen.part('limit', pen.path(`M${coordinate(x)} ${top}V${EDGE_Y + 14}`, { stroke: 'ink', dash: 'limit' }));
};

const example = (pen: Pen, xOf: Place): string => {
  const left = xOf(EXAMPLE.tempC - EXAMPLE.uncertaintyC);
  const box = { x: left, y: READING.top, width: xOf(EXAMPLE.tempC + EXAMPLE.uncertaintyC) - left, height: READING.height };
  const needle = `M${coordinate(xOf(EXAMPLE.tempC))} ${BAND.top - 9}V${EDGE_Y + 9}`;
  return pen.part(
    'example',
    pen.rect(box, { stroke: 'edge', dash: 'assumed' }) +
      pen.path(needle, { stroke: 'edge', dash: 'assumed' }) +
      pen.text('no reading yet', { x: left - 8, y: EDGE_Y - 5, sizePx: 14, tone: 'ink2', anchor: 'end' }),
  );
};

/** A reading beyond the rule: an arrow at the end it left by, with its figure. */
const offRule = (pen: Pen, reading: { tempC: number; uncertaintyC: number }, xOf: Place): string => {
  const isHot = reading.tempC > HIGH_C;
  const edge = xOf(isHot ? HIGH_C : LOW_C);
  const turn = isHot ? 1 : -1;
  const middle = BAND.top + BAND.height / 2;
  const arrow = `M${coordinate(edge - turn * 10)} ${middle - 15}L${coordinate(edge + turn * 11)} ${middle}L${coordinate(edge - turn * 10)} ${middle + 15}z`;
  const text = { x: edge - turn * 16, y: middle + 5, sizePx: 15, weight: 700, anchor: isHot ? 'end' : 'start', halo: 'sheet' } as const;
  return pen.part('off', pen.path(arrow, { fill: 'lamp', stroke: 'on-lamp' })) + pen.text(figure(reading), text);
};

const readingBand = (pen: Pen, data: ReadingRuleData, xOf: Place): string => {
  const { reading, limitC } = data;
  if (reading === null) return example(pen, xOf);
  const { tempC, uncertaintyC } = reading;
  const left = xOf(onRule(tempC - uncertaintyC));
  const right = xOf(onRule(tempC + uncertaintyC));
  const box = { x: left, y: READING.top, width: right - left, height: READING.height };
  const inBox = (atC: number, dash?: 'limit'): string =>
    pen.path(`M${coordinate(xOf(atC))} ${box.y + 1}v${box.height - 2}`, {
      stroke: 'on-lamp',
      ...(dash === undefined ? { width: 'wall' } : { dash }),
    });
  const band = right > left ? pen.part('reading', pen.rect(box, { fill: 'lamp', stroke: 'on-lamp' })) : '';
  const limit = xOf(limitC) > left && xOf(limitC) < right ? inBox(limitC, 'limit') : '';
  if (tempC !== onRule(tempC)) return band + limit + offRule(pen, reading, xOf);
  // On a dark sheet the ink is light and the lamp's ink dark, so the needle is drawn in both.
  const needle = pen.path(`M${coordinate(xOf(tempC))} ${BAND.top - 9}V${EDGE_Y + 9}`, { stroke: 'ink', width: 'wall' });
  return needle + band + limit + inBox(tempC);
};

/**
 * Draws a graduated rule from 10 to 70 °C with the limit as a chain line, the hatched zone beyond it, and the reading with its full
 * ± band laid over. A reading off the rule becomes an arrow at its end; without one a dashed example stands there.
 *
 * @throws ChartInputError when a figure is not finite or the uncertainty is below zero.
 * @example readingRule({ limitC: 50, reading: { tempC: 47.5, uncertaintyC: 2 } }, { palette: 'page', idPrefix: 'cold', widthPx: 560 }).title
 * // '47.5 ± 2 °C covers 45.5 to 49.5 °C, all of it at or under the limit of 50 °C.'
 */
export function readingRule(data: ReadingRuleData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  if (data.reading !== null) checkNotNegative(data.reading.uncertaintyC, 'reading.uncertaintyC');
  const pen = createPen(options);
  const xOf = linearScale({ low: LOW_C, high: HIGH_C, start: INSET_PX, end: options.widthPx - INSET_PX });
  const degrees = Array.from({ length: HIGH_C - LOW_C + 1 }, (_, index) => LOW_C + index);
  const body =
    pen.patterns(['too-hot']) +
    zones(pen, data, xOf) +
    horizontalGraduation(pen, {
      at: EDGE_Y,
      place: xOf,
      ticks: degrees.filter((tempC) => tempC % 10 === 0),
      minorTicks: degrees.filter((tempC) => tempC % 10 !== 0),
      isLonger: (tempC) => tempC % 5 === 0,
      label: (tempC) => formatFigure(tempC),
      sizePx: TYPE_PX,
    }) +
    pen.path(`M${coordinate(xOf(LOW_C))} ${EDGE_Y}H${coordinate(xOf(HIGH_C))}`, { stroke: 'ink' }) +
    limitLine(pen, data, xOf) +
    readingBand(pen, data, xOf);
  const sentence = says(data);
  const { below, above } = zoneWords(data);
  const rows = [
    ['reading', data.reading === null ? 'not read' : figure(data.reading)],
    ['limit', formatFigure(data.limitC)],
  ];
  return finishDrawing(
    {
      title: sentence,
      description: `A rule from ${LOW_C} to ${HIGH_C} °C. Up to the limit: ${below}. Beyond it: ${above}.`,
      table: { caption: 'Reading against the limit', head: ['what', '°C'], rows },
      heightPx: HEIGHT_PX,
      body,
    },
    options,
  );
}
