/** Where the drawing will lie: `page` follows the page's light through CSS classes, `print` carries literal colours only. */
export type Palette = 'page' | 'print';

/** The surface beneath the drawing: the page's floor or a white sheet. */
export type Ground = 'floor' | 'sheet';

/** What every drawing needs to know besides its data. */
export interface DrawingOptions {
  readonly palette: Palette;
  /** Starts every id in the drawing; two drawings on one page need two prefixes. */
  readonly idPrefix: string;
  /** Width at 1:1 in CSS px; from 480 down the narrow variant is drawn. */
  readonly widthPx: number;
  /** Default `floor`. */
  readonly ground?: Ground;
}

/** The same facts in rows, to stand behind the drawing. */
export interface DataTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A finished drawing: the picture, its name, and the table that says the same. */
export interface Drawing {
  readonly svg: string;
  readonly title: string;
  readonly table: DataTable;
}

/** A verdict as it comes from the computing side; charts draw it and never decide it. */
export type Verdict = 'fits' | 'does-not' | 'unsure' | 'not-read';

/** How a figure is known, shown by its underline: solid, dashed, double. */
export type KnownBy = 'measured' | 'assumed' | 'computed';
