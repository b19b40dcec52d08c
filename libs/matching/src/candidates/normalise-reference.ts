/**
 * A reference or part number as it is compared: capitals, letters and digits only.
 *
 * @example normaliseReference('rn-0042/a') // 'RN0042A'
 */
export function normaliseReference(reference: string): string {
  return reference.toUpperCase().replace(/[^\p{L}\p{N}]+/gu, '');
}

const SHORTEST_IN_TEXT = 4;

/**
 * The words of a free text that may be references or part numbers: four characters or more, with a digit.
 *
 * @example referencesInText('Credit for RN-0042, thermostat') // ['RN0042']
 */
export function referencesInText(text: string): string[] {
  return text
    .split(/[\s,;:()]+/u)
    .map(normaliseReference)
    .filter((word) => word.length >= SHORTEST_IN_TEXT && /\p{N}/u.test(word));
}
