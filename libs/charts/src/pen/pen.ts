import { type DrawingOptions } from '../drawing.ts';
import { escapeXml } from '../text/escape-xml.ts';
import { type TypeSpec } from '../text/text-width.ts';
import { coordinate, element } from './element.ts';
import { paintAttributes, type Paint } from './paint.ts';
import { patternDefinition, type PatternName } from './pattern.ts';
import { type Tone } from './tones.ts';

/** A rectangle in px, y downwards. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where and how a line of text stands; `y` is its baseline. */
export interface TextSpec extends TypeSpec {
  readonly x: number;
  readonly y: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly tone?: Tone;
  /** Clears lines beneath the letters with this surface. */
  readonly halo?: Tone;
}

/** A point in px. */
export type Point = readonly [x: number, y: number];

/** The family names as every drawing writes them; the page's variables come first through the stylesheet. */
export const FONT_FAMILIES = { text: 'Asap, system-ui, sans-serif', sign: "'National Park', Asap, sans-serif" } as const;

/** Draws single shapes in one palette. Every method returns markup; nothing is kept. */
export interface Pen {
  readonly palette: DrawingOptions['palette'];
  /** The surface beneath the drawing. */
  readonly ground: Tone;
  /** A surface that stands out from the ground: a band, an empty vessel. */
  readonly band: Tone;
  /** An id of this drawing. */
  id(name: string): string;
  patterns(names: readonly PatternName[]): string;
  path(d: string, paint: Paint): string;
  /** Straight pieces through points. */
  polyline(points: readonly Point[], paint: Paint): string;
  rect(box: Box, paint: Paint & { readonly radius?: number }): string;
  circle(centre: Point, radiusPx: number, paint: Paint): string;
  text(content: string, spec: TextSpec): string;
  /** Names a part of the drawing, for tests and for scripts on the page. */
  part(name: string, children: string): string;
}

const pathThrough = (points: readonly Point[]): string =>
  points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${coordinate(x)} ${coordinate(y)}`).join('');

/** Lays out a pen for one drawing. */
export function createPen({ palette, idPrefix, ground = 'floor' }: DrawingOptions): Pen {
  const id = (name: string): string => `${idPrefix}-${name}`;
  const paint = (spec: Paint) => paintAttributes(spec, palette);
  const path = (d: string, spec: Paint): string => element('path', { d, ...paint(spec) });

  const haloAttributes = (halo: Tone | undefined) => {
    if (halo === undefined) return {};
    const { stroke } = paint({ stroke: halo, width: 5 });
    return { stroke, 'stroke-width': 5, 'stroke-linejoin': 'round', 'paint-order': 'stroke' };
  };

  const text = (content: string, { x, y, sizePx, face = 'text', weight = 400, anchor = 'start', tone = 'ink', halo }: TextSpec): string => {
    const { fill } = paint({ fill: tone });
    const classes = [`cf-${tone}`, face === 'sign' ? 'ct-sign' : '', halo === undefined ? '' : `cs-${halo}`];
    return element(
      'text',
      {
        class: palette === 'page' ? classes.filter((name) => name !== '').join(' ') : undefined,
        x,
        y,
        fill,
        'font-size': sizePx,
        'font-weight': weight,
        'font-family': face === 'sign' ? FONT_FAMILIES.sign : undefined,
        'text-anchor': anchor === 'start' ? undefined : anchor,
        ...haloAttributes(halo),
      },
      escapeXml(content),
    );
  };

  return {
    palette,
    ground,
    band: palette === 'print' ? 'dim' : ground === 'floor' ? 'sheet' : 'floor',
    id,
    patterns: (names) => element('defs', {}, names.map((name) => patternDefinition(name, { id: id(name), palette })).join('')),
    path,
    polyline: (points, spec) => path(pathThrough(points), spec),
    rect: ({ x, y, width, height }, { radius, ...spec }) =>
      element('rect', { x, y, width: Math.max(0, width), height: Math.max(0, height), rx: radius, ...paint(spec) }),
    circle: ([cx, cy], r, spec) => element('circle', { cx, cy, r: Math.max(0, r), ...paint(spec) }),
    text,
    part: (name, children) => element('g', { 'data-part': name }, children),
  };
}
