/** A unit of measure as sent (UN/ECE Recommendation 20) and as printed. */
export interface Unit {
  readonly code: string;
  readonly short: string;
  readonly words: string;
}

/** Units a workshop bills in. Source: UN/ECE Recommendation 20, from memory; HUR, LTR, C62, KGM and MTR stand in the CEN examples, read. */
export const units: readonly Unit[] = [
  { code: 'HUR', short: 'h', words: 'hour' },
  { code: 'MIN', short: 'min', words: 'minute' },
  { code: 'H87', short: 'pc', words: 'piece' },
  { code: 'C62', short: '', words: 'one' },
  { code: 'SET', short: 'set', words: 'set' },
  { code: 'PR', short: 'pair', words: 'pair' },
  { code: 'LTR', short: 'L', words: 'litre' },
  { code: 'MLT', short: 'mL', words: 'millilitre' },
  { code: 'KGM', short: 'kg', words: 'kilogram' },
  { code: 'GRM', short: 'g', words: 'gram' },
  { code: 'MTR', short: 'm', words: 'metre' },
  { code: 'KMT', short: 'km', words: 'kilometre' },
  { code: 'DAY', short: 'd', words: 'day' },
];
