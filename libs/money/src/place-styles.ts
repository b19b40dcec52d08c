import { type MoneyStyle, type NumberMarks } from './money-style.ts';

export type PlaceStyle = NumberMarks & Pick<MoneyStyle, 'currencyFirst' | 'currencyGap'>;

const narrow = '\u202f';
const hard = '\u00a0';

/**
 * Number and money habits by language tag. Source: Unicode CLDR, from memory; the spec compares each with the CLDR data of
 * the JavaScript engine that runs it. A workshop can set its own instead.
 */
export const placeStyles = {
  'en-GB': { decimalMark: '.', groupMark: ',', grouping: 'threes', groupFrom: 4, currencyFirst: true, currencyGap: '' },
  'en-IE': { decimalMark: '.', groupMark: ',', grouping: 'threes', groupFrom: 4, currencyFirst: true, currencyGap: '' },
  'en-US': { decimalMark: '.', groupMark: ',', grouping: 'threes', groupFrom: 4, currencyFirst: true, currencyGap: '' },
  'en-IN': { decimalMark: '.', groupMark: ',', grouping: 'indian', groupFrom: 4, currencyFirst: true, currencyGap: '' },
  'de-DE': { decimalMark: ',', groupMark: '.', grouping: 'threes', groupFrom: 4, currencyFirst: false, currencyGap: hard },
  'de-CH': { decimalMark: '.', groupMark: '’', grouping: 'threes', groupFrom: 4, currencyFirst: true, currencyGap: hard },
  'fr-FR': { decimalMark: ',', groupMark: narrow, grouping: 'threes', groupFrom: 4, currencyFirst: false, currencyGap: hard },
  'it-IT': { decimalMark: ',', groupMark: '.', grouping: 'threes', groupFrom: 5, currencyFirst: false, currencyGap: hard },
  'es-ES': { decimalMark: ',', groupMark: '.', grouping: 'threes', groupFrom: 5, currencyFirst: false, currencyGap: hard },
  'pt-PT': { decimalMark: ',', groupMark: hard, grouping: 'threes', groupFrom: 5, currencyFirst: false, currencyGap: hard },
  'nl-NL': { decimalMark: ',', groupMark: '.', grouping: 'threes', groupFrom: 4, currencyFirst: true, currencyGap: hard },
  'pl-PL': { decimalMark: ',', groupMark: hard, grouping: 'threes', groupFrom: 5, currencyFirst: false, currencyGap: hard },
  'sv-SE': { decimalMark: ',', groupMark: hard, grouping: 'threes', groupFrom: 4, currencyFirst: false, currencyGap: hard },
} as const satisfies Record<string, PlaceStyle>;

export type PlaceTag = keyof typeof placeStyles;
