import { fitText } from './fit-text.ts';
import { textWidth, type TypeSpec } from './text-width.ts';

interface WrapSpec extends TypeSpec {
  readonly maxWidthPx: number;
  /** Lines beyond this are folded into the last one, which is then shortened. Default 3. */
  readonly maxLines?: number;
}

/** A figure and its unit stay on one line. */
const FIGURE_AND_UNIT = /(\d) (?=(?:°C|K|L|mL|m|mm|bar|kPa|km|min|h|d|%)(?![\p{L}\d]))/gu;
const NO_BREAK = '\u00A0';

/**
 * Breaks a text into lines that fit a width; a word too long for a line is shortened.
 *
 * @example wrapText('boils once the cap is off', { sizePx: 15, maxWidthPx: 100 }); // ['boils once the', 'cap is off']
 */
export function wrapText(text: string, { maxWidthPx, maxLines = 3, ...type }: WrapSpec): string[] {
  const lines: string[] = [];
  for (const word of text
    .replace(FIGURE_AND_UNIT, `$1${NO_BREAK}`)
    .split(/[ \t\r\n]+/)
    .filter((part) => part !== '')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    const fits = textWidth(longer, type) <= maxWidthPx;
    if (last !== undefined && (fits || lines.length === maxLines)) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.map((line) => fitText(line, { ...type, maxWidthPx }));
}
