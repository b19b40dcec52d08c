const LENGTH = 17;
const LOOK_ALIKE: Readonly<Record<string, string>> = { I: '1', O: '0', Q: '0' };

/**
 * What is wrong with the form of a vehicle identification number, in words that say what to change.
 *
 * @param vin - as normalised: upper case, without spaces and hyphens
 * @returns one sentence per problem; empty when the form is right
 * @example
 * vinFormProblems('1M8GDM9AXKPO42788'); // ["Position 12 is the letter O, which no VIN has: probably the digit 0."]
 */
export function vinFormProblems(vin: string): string[] {
  if (vin === '') return ['No VIN was given: type the 17 characters from the registration document or the windscreen plate.'];
  return [...lengthProblems(vin), ...characterProblems(vin)];
}

function lengthProblems(vin: string): string[] {
  const found = [...vin].length;
  if (found === LENGTH) return [];
  const difference = Math.abs(LENGTH - found);
  const way = found < LENGTH ? `${difference} missing` : `${difference} too many`;
  return [
    `A VIN has ${LENGTH} characters, this has ${found}: ${way}. Vehicles from before 1981 can have shorter numbers, which can't be checked.`,
  ];
}

function characterProblems(vin: string): string[] {
  return [...vin].slice(0, LENGTH).flatMap((character, index) => {
    const digit = LOOK_ALIKE[character];
    if (digit !== undefined) return [`Position ${index + 1} is the letter ${character}, which no VIN has: probably the digit ${digit}.`];
    if (/^[A-Z0-9]$/.test(character)) return [];
    return [`Position ${index + 1} is '${character}': a VIN has only the letters A to Z (without I, O, Q) and the digits 0 to 9.`];
  });
}
