import { type LineKind, lineWords } from './line-words.ts';

/**
 * What a line is by its words, or undefined when they say nothing. Whole words only: 'paid' is not in 'unpaid'.
 *
 * @param text - the line's description, in any case
 * @example recogniseLine('Carriage on return') // 'carriage'
 */
export function recogniseLine(text: string): LineKind | undefined {
  const lower = ` ${text.toLowerCase().replace(/[^\p{L}\p{N}/-]+/gu, ' ')} `;
  return lineWords.find(({ words }) => words.some((word) => lower.includes(` ${word} `)))?.kind;
}
