/**
 * What a currency needs for reading and showing: decimals of its smallest unit and the signs people type for it.
 * Source: ISO 4217 minor units and common signs, from memory; the workshop chooses its currency in its settings.
 */
export interface Currency {
  readonly code: string;
  readonly minorDigits: number;
  readonly symbol: string;
  /** Further ways in which people write it. */
  readonly typed: readonly string[];
}

export const currencies: readonly Currency[] = [
  { code: 'EUR', minorDigits: 2, symbol: '€', typed: ['euro', 'euros'] },
  { code: 'GBP', minorDigits: 2, symbol: '£', typed: [] },
  { code: 'USD', minorDigits: 2, symbol: '$', typed: ['US$'] },
  { code: 'CAD', minorDigits: 2, symbol: '$', typed: ['CA$', 'C$'] },
  { code: 'AUD', minorDigits: 2, symbol: '$', typed: ['A$'] },
  { code: 'NZD', minorDigits: 2, symbol: '$', typed: ['NZ$'] },
  { code: 'CHF', minorDigits: 2, symbol: 'CHF', typed: ['Fr.', 'Fr', 'SFr.'] },
  { code: 'SEK', minorDigits: 2, symbol: 'kr', typed: ['kr.'] },
  { code: 'NOK', minorDigits: 2, symbol: 'kr', typed: ['kr.'] },
  { code: 'DKK', minorDigits: 2, symbol: 'kr.', typed: ['kr'] },
  { code: 'ISK', minorDigits: 0, symbol: 'kr', typed: ['kr.'] },
  { code: 'PLN', minorDigits: 2, symbol: 'zł', typed: ['zl'] },
  { code: 'CZK', minorDigits: 2, symbol: 'Kč', typed: ['Kc'] },
  { code: 'HUF', minorDigits: 2, symbol: 'Ft', typed: [] },
  { code: 'RON', minorDigits: 2, symbol: 'lei', typed: ['leu'] },
  { code: 'TRY', minorDigits: 2, symbol: '₺', typed: ['TL'] },
  { code: 'ZAR', minorDigits: 2, symbol: 'R', typed: [] },
  { code: 'INR', minorDigits: 2, symbol: '₹', typed: ['Rs', 'Rs.'] },
  { code: 'JPY', minorDigits: 0, symbol: '¥', typed: ['円'] },
];
