import { currencies } from './currencies.ts';

export interface CurrencyDropped {
  /** The typed text without the sign. */
  readonly rest: string;
  /** The sign or code found, null for none. */
  readonly sign: string | null;
  /** The currencies the sign can stand for. */
  readonly codes: readonly string[];
}

const signs: readonly { readonly sign: string; readonly codes: readonly string[] }[] = signTable();

function signTable(): { sign: string; codes: string[] }[] {
  const codesOf = new Map<string, string[]>();
  for (const currency of currencies) {
    for (const sign of new Set([currency.code, currency.symbol, ...currency.typed])) {
      const key = sign.toLowerCase();
      codesOf.set(key, [...(codesOf.get(key) ?? []), currency.code]);
    }
  }
  // Longest first, or 'kr.' would be read as 'kr' and leave its point behind.
  return [...codesOf].map(([sign, codes]) => ({ sign, codes })).sort((a, b) => b.sign.length - a.sign.length);
}

/**
 * Takes one currency sign or code off either end of what a person typed.
 *
 * @example dropCurrency('€ 12.50') // { rest: '12.50', sign: '€', codes: ['EUR'] }
 */
export function dropCurrency(text: string): CurrencyDropped {
  const lower = text.toLowerCase();
  for (const { sign, codes } of signs) {
    if (lower.startsWith(sign)) return { rest: text.slice(sign.length).trim(), sign: text.slice(0, sign.length), codes };
    if (lower.endsWith(sign)) return { rest: text.slice(0, -sign.length).trim(), sign: text.slice(-sign.length), codes };
  }
  return { rest: text, sign: null, codes: [] };
}
