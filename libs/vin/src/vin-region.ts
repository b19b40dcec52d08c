/** Part of the world that gave out the first character of a VIN. */
export type VinRegion = 'north-america' | 'china' | 'asia' | 'europe' | 'africa' | 'oceania' | 'south-america' | 'unknown';

/**
 * Tells where a vehicle identification number was given out, from its first character.
 *
 * Source: ISO 3780 regions, from memory.
 *
 * @param vin - the number, upper case
 * @returns the region; 'unknown' for characters that no region uses
 * @example
 * vinRegion('1M8GDM9AXKP042788'); // 'north-america'
 */
export function vinRegion(vin: string): VinRegion {
  const first = vin.charAt(0);
  if (/[1-5]/.test(first)) return 'north-america';
  if (first === 'L') return 'china';
  if (/[J-R]/.test(first)) return 'asia';
  if (/[S-Z]/.test(first)) return 'europe';
  if (/[A-H]/.test(first)) return 'africa';
  if (/[67]/.test(first)) return 'oceania';
  if (/[89]/.test(first)) return 'south-america';
  return 'unknown';
}
