import type { Drawing, DrawingOptions } from '#libs/charts';

/** A drawing for the desk and one drawn anew for the phone, with the table that says the same. */
export interface DrawnView {
  readonly wide: string;
  readonly narrow: string;
  readonly title: string;
  readonly table: Drawing['table'];
}

/** Draws once for each width; the style sheet shows one of the two. */
export function drawn(
  id: string,
  widthsPx: { readonly wide: number; readonly narrow: number },
  draw: (options: DrawingOptions) => Drawing,
): DrawnView {
  const wide = draw({ palette: 'page', idPrefix: `${id}-w`, widthPx: widthsPx.wide });
  const narrow = draw({ palette: 'page', idPrefix: `${id}-n`, widthPx: widthsPx.narrow });
  return { wide: wide.svg, narrow: narrow.svg, title: wide.title, table: wide.table };
}
