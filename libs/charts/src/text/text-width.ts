import { ASAP_WIDTHS, SIGN_600_WIDTHS, SIGN_800_WIDTHS, type GlyphWidths } from './glyph-widths.ts';

/** The type a text is set in: `text` is Asap, `sign` is National Park. */
export interface TypeSpec {
  readonly sizePx: number;
  readonly face?: 'text' | 'sign';
  readonly weight?: 400 | 600 | 700 | 800;
}

const FALLBACK_MILLI = 650;
const FULL_WIDTH_MILLI = 1000;
const FIRST_FULL_WIDTH = 0x2e80;

const tableFor = ({ face, weight }: TypeSpec): GlyphWidths => {
  if (face !== 'sign') return ASAP_WIDTHS;
  return weight === 600 ? SIGN_600_WIDTHS : SIGN_800_WIDTHS;
};

const glyphMilli = (glyph: string, table: GlyphWidths): number => {
  const known = table.others[glyph];
  if (known !== undefined) return known;
  const code = glyph.codePointAt(0) ?? 0;
  if (code >= FIRST_FULL_WIDTH) return FULL_WIDTH_MILLI;
  // An accented letter is as wide as its base letter; scripts that fall back to another face get a generous guess.
  const base = glyph.normalize('NFKD').codePointAt(0) ?? 0;
  return table.ascii[base - 32] ?? FALLBACK_MILLI;
};

/**
 * How wide a text will be, in px, without a browser: needed to place labels on the server.
 * Kerning is left out, so the answer errs to the wide side.
 *
 * @example textWidth('°C', { sizePx: 100 }); // 96.4
 */
export function textWidth(text: string, type: TypeSpec): number {
  const table = tableFor(type);
  let milli = 0;
  for (const glyph of text) milli += glyphMilli(glyph, table);
  return (milli * type.sizePx) / 1000;
}
