import { shownTemperature, type TemperatureUnit } from '#libs/units';
import { checkInput } from './check-input.ts';
import { type Drawing, type DrawingOptions, type KnownBy } from './drawing.ts';
import { verticalGraduation } from './marks/graduation.ts';
import { peg } from './marks/peg.ts';
import { coordinate } from './pen/element.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Pen } from './pen/pen.ts';
import { placeLabels } from './placing/place-labels.ts';
import { extent } from './scale/extent.ts';
import { linearScale } from './scale/linear-scale.ts';
import { niceRange } from './scale/nice-range.ts';
import { scaleTicks } from './scale/scale-ticks.ts';
import { formatFigure } from './text/format-figure.ts';
import { textWidth } from './text/text-width.ts';
import { wrapText } from './text/wrap-text.ts';

/** One temperature on the bar. */
export interface RangeMark {
  readonly tempC: number;
  readonly knownBy: KnownBy;
  /** The line under the figure, instead of the default words. */
  readonly note?: string;
  /** Written instead of the bare figure, in the bar's unit, such as 'at least −48'. */
  readonly figure?: string;
}

/** From freezing to boiling, and the temperatures that must lie between. */
export interface RangeBarData {
  /** Null with `boils` null: the dashed example. */
  readonly freezes: RangeMark | null;
  readonly boils: RangeMark | null;
  readonly boilsOpen?: RangeMark;
  readonly coldest?: RangeMark;
  readonly hottest?: RangeMark;
  readonly thermostat?: RangeMark;
  /** What the bar is ruled in; °C where left out. */
  readonly unit?: TemperatureUnit;
}

type Role = Exclude<keyof RangeBarData, 'unit'>;

interface PlacedMark extends RangeMark {
  readonly role: Role;
  /** In the bar's unit. */
  readonly temp: number;
  readonly figure: string;
  readonly note: string;
  readonly isOutside: boolean;
}

const NOTES: Readonly<Record<Role, string>> = {
  freezes: 'freezes',
  boils: 'boils, cap on',
  boilsOpen: 'boils once the cap is off',
  coldest: 'coldest air',
  hottest: 'hottest expected',
  thermostat: 'thermostat opens',
};
const ROLES: readonly Role[] = ['boils', 'boilsOpen', 'hottest', 'thermostat', 'coldest', 'freezes'];
const EXAMPLE: RangeBarData = {
  freezes: { tempC: -37, knownBy: 'assumed', note: 'freezes: mix not known yet' },
  boils: { tempC: 125, knownBy: 'assumed', note: 'boils: cap and height not known yet' },
};

/** What the bar shows at least, in round figures of its unit. */
const LEAST_REACH: Readonly<Record<TemperatureUnit, { low: number; high: number }>> = {
  '°C': { low: -50, high: 150 },
  '°F': { low: -50, high: 300 },
};

const BAR = { x: 56, width: 36 } as const;
const LABEL_X = BAR.x + BAR.width + 66;
const FIGURE_PX = 22;
const NOTE_PX = 15;
const LINE_PX = 19;
const GAP_PX = 12;
const MARGIN_PX = 10;
const LEAST_HEIGHT_PX = 530;
const NARROW_HEIGHT_PX = 400;

const marksOf = (data: RangeBarData, unit: TemperatureUnit): PlacedMark[] => {
  const { freezes, boils } = data;
  const isBeyond = (tempC: number): boolean => (freezes !== null && tempC < freezes.tempC) || (boils !== null && tempC > boils.tempC);
  return ROLES.flatMap((role) => {
    const mark = data[role];
    if (mark === null || mark === undefined) return [];
    const isOutside = role !== 'freezes' && role !== 'boils' && role !== 'boilsOpen' && isBeyond(mark.tempC);
    const temp = shownTemperature(mark.tempC, unit);
    return [{ ...mark, role, temp, figure: mark.figure ?? formatFigure(temp, { decimals: 1 }), note: mark.note ?? NOTES[role], isOutside }];
  });
};

const underline = (pen: Pen, { x, y, width, knownBy }: { x: number; y: number; width: number; knownBy: KnownBy }): string => {
  const run = `h${coordinate(width)}`;
  const at = `M${coordinate(x)} ${coordinate(y)}`;
  switch (knownBy) {
    case 'measured':
      return pen.path(at + run, { stroke: 'ink', width: 2 });
    case 'assumed':
      return pen.path(at + run, { stroke: 'edge', width: 2, dash: 'fine' });
    case 'computed':
      return pen.path(`${at}${run}M${coordinate(x)} ${coordinate(y + 3)}${run}`, { stroke: 'ink', width: 1 });
  }
};

interface Label {
  readonly mark: PlacedMark;
  readonly lines: readonly string[];
  readonly heightPx: number;
}

const labelOf = (mark: PlacedMark, roomPx: number): Label => {
  const note = mark.isOutside ? `${mark.note}: outside the range` : mark.note;
  const lines = wrapText(note, { sizePx: NOTE_PX, maxWidthPx: roomPx });
  return { mark, lines, heightPx: FIGURE_PX + 6 + lines.length * LINE_PX + GAP_PX };
};

const drawLabel = (
  pen: Pen,
  { mark, lines, heightPx }: Label,
  { middle, markY, unit }: { middle: number; markY: number; unit: TemperatureUnit },
): string => {
  const written = `${mark.figure} ${unit}`;
  const top = middle - (heightPx - GAP_PX) / 2;
  const baseline = top + FIGURE_PX * 0.8;
  const figure = { sizePx: FIGURE_PX, face: 'sign', weight: 800 } as const;
  const leader = `M${BAR.x + BAR.width} ${coordinate(markY)}h26L${LABEL_X - 20} ${coordinate(baseline - 8)}h12`;
  const width = textWidth(written, figure);
  return (
    pen.path(leader, { stroke: mark.isOutside ? 'no' : 'ink', ...(mark.knownBy === 'assumed' ? { dash: 'assumed' } : {}) }) +
    pen.text(written, { ...figure, x: LABEL_X, y: baseline, tone: mark.isOutside ? 'no' : 'ink' }) +
    (mark.isOutside ? peg(pen, 'does-not', { centre: [LABEL_X + width + 18, baseline - 8], radiusPx: 9 }) : '') +
    underline(pen, { x: LABEL_X, y: baseline + 5, width, knownBy: mark.knownBy }) +
    lines
      .map((line, index) => pen.text(line, { x: LABEL_X, y: baseline + 9 + (index + 1) * LINE_PX - 4, sizePx: NOTE_PX, tone: 'ink2' }))
      .join('')
  );
};

const bar = (pen: Pen, marks: readonly PlacedMark[], yOf: (temp: number) => number, isExample: boolean): string => {
  const box = (top: number, bottom: number) => ({ x: BAR.x, y: Math.min(top, bottom), width: BAR.width, height: Math.abs(bottom - top) });
  const [freezes, boils] = (['freezes', 'boils'] as const).map((role) => marks.find((mark) => mark.role === role));
  if (!freezes || !boils) return '';
  const range = box(yOf(boils.temp), yOf(freezes.temp));
  if (isExample) return pen.part('range', pen.rect(range, { stroke: 'edge', dash: 'assumed' }));
  return pen.part('range', pen.rect(range, { fill: 'green' }));
};

/**
 * Draws the liquid range as an upright bar from freezing to boiling, with leader lines to what must lie in it. Labels are moved apart
 * until none overlap; the drawing grows when they need more room. A temperature outside the range gets a square peg and says so.
 * Figures are underlined by how they are known: solid measured, dashed assumed, double computed.
 *
 * @throws ChartInputError when a figure is not finite.
 * @example rangeBar({ freezes: { tempC: -27, knownBy: 'computed' }, boils: { tempC: 121, knownBy: 'computed' } },
 *   { palette: 'page', idPrefix: 'r', widthPx: 330 }).title // 'Liquid from −27 to 121 °C'
 */
export function rangeBar(data: RangeBarData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  const pen = createPen(options);
  const isExample = data.freezes === null || data.boils === null;
  const shown = isExample ? { ...data, freezes: data.freezes ?? EXAMPLE.freezes, boils: data.boils ?? EXAMPLE.boils } : data;
  const { unit = '°C' } = data;
  const marks = marksOf(shown, unit);
  const labels = marks.map((mark) => labelOf(mark, options.widthPx - LABEL_X - 4));
  const needed = labels.reduce((sum, { heightPx }) => sum + heightPx, 0);
  const barPx = Math.max(options.widthPx <= 320 ? NARROW_HEIGHT_PX : LEAST_HEIGHT_PX, needed);
  const reach = extent(
    marks.map(({ temp }) => temp),
    LEAST_REACH[unit],
  );
  const rough = scaleTicks({ ...reach, maxCount: 6 });
  const range = niceRange({ ...reach, step: rough.step });
  const yOf = linearScale({ ...range, start: MARGIN_PX + barPx, end: MARGIN_PX });
  const { ticks, minorTicks } = scaleTicks({ ...range, maxCount: 7 });
  const room = { from: MARGIN_PX - 6, to: MARGIN_PX + barPx + 6 + GAP_PX };
  const middles = placeLabels(
    labels.map(({ mark, heightPx }) => ({ want: yOf(mark.temp) + GAP_PX / 2 + 6, size: heightPx })),
    room,
  );
  const body =
    pen.rect({ x: BAR.x, y: MARGIN_PX, width: BAR.width, height: barPx }, { fill: 'sheet', radius: 3 }) +
    bar(pen, marks, yOf, isExample) +
    pen.rect({ x: BAR.x, y: MARGIN_PX, width: BAR.width, height: barPx }, { stroke: 'ink', width: 3, radius: 3 }) +
    verticalGraduation(pen, { at: BAR.x, place: yOf, ticks, minorTicks, label: (temp) => formatFigure(temp), sizePx: 15 }) +
    labels
      .map((label, index) => drawLabel(pen, label, { middle: (middles[index] ?? 0) - GAP_PX / 2, markY: yOf(label.mark.temp), unit }))
      .join('');
  const [from = '', to = ''] = (['freezes', 'boils'] as const).map((role) => marks.find((mark) => mark.role === role)?.figure);
  return finishDrawing(
    {
      title: isExample ? 'Liquid range: not known yet, an example is drawn dashed' : `Liquid from ${from} to ${to} ${unit}`,
      description: marks.map((mark) => `${mark.figure} ${unit} ${mark.note}${mark.isOutside ? ', outside the range' : ''}`).join('; '),
      table: {
        caption: 'From freezing to boiling',
        head: ['what', unit, 'known by'],
        rows: marks.map((mark) => [mark.note, mark.figure, mark.knownBy]),
      },
      heightPx: barPx + MARGIN_PX * 2 + 8,
      body,
    },
    options,
  );
}
