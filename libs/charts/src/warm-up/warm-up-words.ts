import { coordinate } from '../pen/element.ts';
import { type Box, type Pen, type Point, type TextSpec } from '../pen/pen.ts';
import { type Tone } from '../pen/tones.ts';
import { textBox } from '../placing/boxes.ts';
import { chooseSpot } from '../placing/choose-spot.ts';
import { fitText } from '../text/fit-text.ts';
import { formatFigure } from '../text/format-figure.ts';
import { textWidth } from '../text/text-width.ts';
import { wrapText } from '../text/wrap-text.ts';
import { type CurveRole } from './warm-up-curves.ts';
import { type WarmUpKnee } from './warm-up-data.ts';
import { type WarmUpFrame } from './warm-up-frame.ts';

/** Lines of text under one another with the room they take; the spec is the first line's. */
export interface PlacedText {
  readonly lines: readonly string[];
  readonly spec: TextSpec;
  readonly box: Box;
}

const LINE_HEIGHT = 1.25;

const placed = (lines: readonly string[], spec: TextSpec): PlacedText => {
  const boxes = lines.map((line) => textBox(line, spec));
  const x = Math.min(...boxes.map((box) => box.x));
  const width = Math.max(...boxes.map((box) => box.width));
  const height = spec.sizePx * (1 + (lines.length - 1) * LINE_HEIGHT);
  return { lines, spec, box: { x, y: boxes[0]?.y ?? spec.y, width, height } };
};

const bounds = ({ left, right, top, bottom }: WarmUpFrame): Box => ({ x: left + 2, y: top, width: right - left - 4, height: bottom - top });

/** What labels keep clear of: other texts strictly, lines where they can. */
export interface Taken {
  readonly lines: readonly Box[];
  readonly texts: readonly Box[];
}

const choose = (candidates: readonly PlacedText[], frame: WarmUpFrame, taken: Taken): PlacedText | null => {
  const spot = chooseSpot(
    candidates.map(({ box }) => box),
    { ...taken, bounds: bounds(frame) },
  );
  return candidates[spot] ?? null;
};

/** The bend in words, in its own row above the plot. */
export function kneeText(knee: WarmUpKnee, { frame, row, prefix }: { frame: WarmUpFrame; row: number; prefix: string }): PlacedText {
  const figure = `${formatFigure(knee.tempC)} ± ${formatFigure(knee.halfWidthC)} °C`;
  const type = { sizePx: frame.typePx, weight: 700 } as const;
  const room = frame.right - frame.left;
  const long = `${prefix}${knee.words ?? 'thermostat opens'}, ${figure}`;
  const short = `${prefix}${knee.words ?? 'opens'}, ${figure}`;
  const content = fitText(textWidth(long, type) <= room ? long : short, { ...type, maxWidthPx: room });
  const width = textWidth(content, type);
  const x = frame.xOf(knee.minute);
  const start = Math.max(frame.left, x + 10 + width > frame.right ? Math.min(x - 10 - width, frame.right - width) : x + 10);
  return placed([content], { ...type, x: start, y: 16 + row * 24 });
}

/** What the band is, in one of its corners. */
export function bandText(frame: WarmUpFrame, { nominalC, taken }: { nominalC: number; taken: Taken }): PlacedText | null {
  const { band, yOf, left, right, isNarrow } = frame;
  if (band === null || yOf(band.low) - yOf(band.high) < 20) return null;
  const range = `${formatFigure(band.low)} to ${formatFigure(band.high)} °C`;
  const type = { sizePx: isNarrow ? 13 : 15, weight: 600, tone: 'green' } as const;
  const long = `${range}: within ${formatFigure(nominalC - band.low)} °C of the ${formatFigure(nominalC)} on the part`;
  const rows = [yOf(band.high) + 18, yOf(band.low) - 7];
  const corners = (content: string): PlacedText[] =>
    rows.flatMap((y) => [placed([content], { ...type, x: left + 8, y }), placed([content], { ...type, x: right - 8, y, anchor: 'end' })]);
  return choose([...corners(long), ...corners(range)], frame, taken);
}

const SWATCH_PX = 30;

interface CurveTextSpec {
  readonly frame: WarmUpFrame;
  readonly points: readonly Point[];
  readonly taken: Taken;
  readonly role: CurveRole;
}

/** The name of a curve, with a piece of the curve before it, set where it covers least. */
export function curveText(label: string, { frame, points, taken, role }: CurveTextSpec): PlacedText | null {
  const type = { sizePx: frame.isNarrow ? 14 : 16, weight: 700, tone: role === 'after' ? 'green' : 'ink' } as const;
  const room = frame.right - frame.left - SWATCH_PX - 16;
  const isLong = textWidth(label, type) > room * 0.66;
  const lines = wrapText(label, { ...type, maxWidthPx: isLong ? room * 0.66 : room, maxLines: 2 });
  const width = Math.max(...lines.map((line) => textWidth(line, type))) + SWATCH_PX;
  const above = (lines.length - 1) * type.sizePx * LINE_HEIGHT;
  const shares = [0.5, 0.62, 0.38, 0.74, 0.26, 0.86, 0.14, 0.95, 0.05];
  const spots = shares.flatMap((share) => {
    const point = points[Math.round(share * (points.length - 1))];
    if (point === undefined) return [];
    const x = Math.max(frame.left + 4, Math.min(frame.right - width - 4, point[0] - width / 2));
    return [-16 - above, 30, -34 - above, 48, -60 - above, 74, -90 - above, 110].map((shift): PlacedText => {
      const text = placed(lines, { ...type, x: x + SWATCH_PX, y: point[1] + shift });
      return { ...text, box: { ...text.box, x, width } };
    });
  });
  return choose(spots, frame, taken);
}

/** Writes a placed text, its lines cleared of what lies beneath. */
export function writeText(pen: Pen, { lines, spec }: PlacedText, halo: Tone): string {
  return lines.map((line, row) => pen.text(line, { ...spec, y: spec.y + row * spec.sizePx * LINE_HEIGHT, halo })).join('');
}

/** The piece of curve before a curve's name. */
export function curveSwatch(pen: Pen, { spec }: PlacedText, role: CurveRole): string {
  const y = spec.y - spec.sizePx * 0.33;
  const line = `M${coordinate(spec.x - SWATCH_PX)} ${coordinate(y)}h${SWATCH_PX - 6}`;
  if (role === 'after') return pen.path(line, { stroke: 'green', width: 'wall' });
  return pen.path(line, { stroke: 'ink' }) + pen.circle([spec.x - SWATCH_PX / 2 - 3, y], 4.5, { fill: pen.ground, stroke: 'ink' });
}
