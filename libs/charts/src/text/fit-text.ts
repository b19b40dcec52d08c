import { textWidth, type TypeSpec } from './text-width.ts';

/**
 * Shortens a text to a width, ending in an ellipsis when something was cut; the data table keeps the whole.
 *
 * @example fitText('Halfmoon Factors', { sizePx: 14, maxWidthPx: 60 }); // 'Halfmo…'
 */
export function fitText(text: string, { maxWidthPx, ...type }: TypeSpec & { readonly maxWidthPx: number }): string {
  if (textWidth(text, type) <= maxWidthPx) return text;
  const glyphs = [...text];
  let room = maxWidthPx - textWidth('…', type);
  let kept = '';
  for (const glyph of glyphs) {
    room -= textWidth(glyph, type);
    if (room < 0) break;
    kept += glyph;
  }
  return `${kept.trimEnd()}…`;
}
