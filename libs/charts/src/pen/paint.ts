import { type Palette } from '../drawing.ts';
import { LINE_WIDTHS, TONES, type LineWidth, type Tone } from './tones.ts';

/** Solid is known; broken is assumed; the chain line is a limit. */
type Dash = 'assumed' | 'fine' | 'limit';

const DASHES: Readonly<Record<Dash, string>> = { assumed: '7 5', fine: '3.4 2.9', limit: '14 4 3 4' };

/** How a shape is painted. What is left out is not painted. */
export interface Paint {
  readonly fill?: Tone;
  /** Id of a pattern in the same drawing, instead of `fill`. */
  readonly pattern?: string;
  readonly stroke?: Tone;
  /** A named width follows the light; a number does not. Default `stroke`. */
  readonly width?: LineWidth | number;
  readonly dash?: Dash;
  readonly cap?: 'round' | 'butt';
}

/** Attributes of one element, in the order they are written. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

const colour = (tone: Tone, palette: Palette): string => (palette === 'print' ? TONES[tone].print : TONES[tone].day);

const fillOf = ({ fill, pattern }: Paint, palette: Palette): string => {
  if (pattern !== undefined) return `url(#${pattern})`;
  return fill === undefined ? 'none' : colour(fill, palette);
};

const classesOf = ({ fill, pattern, stroke, width = 'stroke' }: Paint): string | undefined => {
  const classes = [
    fill !== undefined && pattern === undefined ? `cf-${fill}` : '',
    stroke === undefined ? '' : `cs-${stroke}`,
    stroke === undefined || typeof width === 'number' ? '' : `cw-${width}`,
  ].filter((name) => name !== '');
  return classes.length === 0 ? undefined : classes.join(' ');
};

/**
 * Turns a paint into attributes: always literal daylight (or paper) colours, and on the page also the classes that follow its light.
 * Presentation attributes give way to any class, so neither a style attribute nor a second drawing is needed.
 */
export function paintAttributes(paint: Paint, palette: Palette): Attributes {
  const { stroke, width = 'stroke', dash, cap } = paint;
  return {
    class: palette === 'page' ? classesOf(paint) : undefined,
    fill: fillOf(paint, palette),
    stroke: stroke === undefined ? undefined : colour(stroke, palette),
    'stroke-width': stroke === undefined ? undefined : typeof width === 'number' ? width : LINE_WIDTHS[width].day,
    'stroke-dasharray': dash === undefined ? undefined : DASHES[dash],
    'stroke-linejoin': stroke === undefined ? undefined : 'round',
    'stroke-linecap': cap,
  };
}
