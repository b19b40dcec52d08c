/** Shorter numbers are too alike for a slip to mean anything; longer ones are no numbers but texts. */
const SHORTEST = 5;
const LONGEST = 40;

/**
 * Keys that two numbers share when they differ by one slip of the pen: a character wrong, missing, too many, or two
 * neighbours swapped. Each key leaves out one character.
 *
 * @param number - normalised
 * @returns the number itself and every way to leave one character out; nothing for very short or long ones
 * @example slipKeys('12345') // ['12345', '2345', '1345', '1245', '1235', '1234']
 */
export function slipKeys(number: string): string[] {
  const characters = [...number];
  if (characters.length < SHORTEST || characters.length > LONGEST) return [];
  return [number, ...characters.map((_, index) => [...characters.slice(0, index), ...characters.slice(index + 1)].join(''))];
}
