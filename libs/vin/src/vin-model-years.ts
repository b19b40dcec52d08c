import { cycleStarts, modelYearCodes } from './vin-tables.ts';
import { vinRegion } from './vin-region.ts';

/**
 * The model years that position 10 of a vehicle identification number can stand for.
 *
 * The code repeats every 30 years. In North America the character in position 7 parts the two cycles for cars and light
 * vehicles: a letter from 2010 on (49 CFR 565.15(b), read), a digit before (from memory). Heavy vehicles don't follow that.
 * Makers elsewhere need not state the year at all (from memory): what comes back for them is a possibility, no more.
 *
 * @param vin - a well-formed number, upper case
 * @param latestModelYear - last year that can exist yet; later ones are left out
 * @returns years, ascending; empty when position 10 is no year code
 * @example
 * vinModelYears('1G4AH59H45G118341'); // [2005]
 */
export function vinModelYears(vin: string, latestModelYear = Number.POSITIVE_INFINITY): number[] {
  const offset = modelYearCodes.indexOf(vin.charAt(9));
  if (offset < 0) return [];
  const isLaterCycle = /[A-Z]/.test(vin.charAt(6));
  return cycleStarts
    .filter((start) => vinRegion(vin) !== 'north-america' || (start === cycleStarts[1]) === isLaterCycle)
    .map((start) => start + offset)
    .filter((year) => year <= latestModelYear);
}
