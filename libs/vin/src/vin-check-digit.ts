import { characterValues, positionWeights } from './vin-tables.ts';

/**
 * The check digit that belongs to a vehicle identification number: the weighted sum of its characters, modulo 11, with ten
 * written as X. The remainder is taken of whole numbers: the regulation's decimal table is not needed and, as sometimes
 * reprinted, wrong in one place (7/11 is .636).
 *
 * Source: 49 CFR 565.15(c) (read).
 *
 * @param vin - seventeen characters, upper case, without I, O and Q: check that first
 * @returns '0' to '9' or 'X'
 * @throws RangeError when a character has no value
 * @example
 * vinCheckDigit('1M8GDM9AXKP042788'); // 'X': the sum is 351
 */
export function vinCheckDigit(vin: string): string {
  let sum = 0;
  for (const [index, weight] of positionWeights.entries()) {
    const value = characterValues[vin.charAt(index)];
    if (value === undefined) throw new RangeError(`Position ${index + 1} of '${vin}' is not a character that a VIN can have.`);
    sum += weight * value;
  }
  const remainder = sum % 11;
  return remainder === 10 ? 'X' : String(remainder);
}
