import { cleanText } from './clean-text.ts';

/** Nothing that a tablet sends is nested as deep as this. */
const DEEPEST = 12;
const LONE_SURROGATE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/**
 * Free JSON as the database can keep it: signs that no record can hold are left out of its texts and names.
 *
 * @returns undefined where it is nested too deep
 * @example cleanJson({ words: 'a\0b' }) // { words: 'ab' }
 */
export function cleanJson(value: unknown, depth = 0): unknown {
  if (depth > DEEPEST) return undefined;
  if (typeof value === 'string') return cleanSigns(value);
  if (typeof value !== 'object' || value === null) return value ?? null;
  if (Array.isArray(value)) {
    const items = value.map((item: unknown) => cleanJson(item, depth + 1));
    return items.includes(undefined) ? undefined : items;
  }
  const entries = Object.entries(value).map(([key, item]) => [cleanSigns(key), cleanJson(item, depth + 1)] as const);
  return entries.some(([, item]) => item === undefined) ? undefined : Object.fromEntries(entries);
}

function cleanSigns(text: string): string {
  return cleanText(text.replaceAll(LONE_SURROGATE, '\uFFFD'));
}
