import { type Box, type TextSpec } from '../pen/pen.ts';
import { textWidth } from '../text/text-width.ts';

/** Letters reach this far above and below their baseline, in type sizes. */
const ASCENT = 0.78;
const DESCENT = 0.22;

/** The room a line of text takes. */
export function textBox(content: string, spec: TextSpec): Box {
  const width = textWidth(content, spec);
  const shift = { start: 0, middle: width / 2, end: width }[spec.anchor ?? 'start'];
  return { x: spec.x - shift, y: spec.y - spec.sizePx * ASCENT, width, height: spec.sizePx * (ASCENT + DESCENT) };
}

/** The area two boxes share, in square px; 0 when they only touch. */
export function sharedArea(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

/** How much of a box lies outside another, in square px. */
export function areaOutside(box: Box, bounds: Box): number {
  return Math.max(0, box.width * box.height - sharedArea(box, bounds));
}
