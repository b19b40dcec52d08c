/** No sign that is taken for another: no 0 and O, 1, I and L, 2 and Z, 5 and S, 8 and B, U and V. 23 of them, a prime. */
const SIGNS = 'ACDEFGHJKMNPQRTUWXY3469';
const LENGTH = 6;

/** Weighted sum over all signs; a whole code comes to 0. As 23 is prime, one wrong sign or two swapped ones never do. */
function checkSum(signs: string): number {
  return [...signs].reduce((sum, sign, index) => sum + (index + 1) * SIGNS.indexOf(sign), 0) % SIGNS.length;
}

/**
 * A new short code for a piece, the last sign of which checks the others.
 *
 * @param pick a whole number from 0 to below the given one, each as likely
 * @example unitCode(() => 0) // 'AAAAAA'
 */
export function unitCode(pick: (below: number) => number): string {
  const free = Array.from({ length: LENGTH - 1 }, () => SIGNS.charAt(pick(SIGNS.length))).join('');
  const last = [...SIGNS].find((sign) => checkSum(free + sign) === 0);
  return free + (last ?? '');
}

/** As it is written on the label. @example unitCodeText('KM7A4Q') // 'KM7-A4Q' */
export const unitCodeText = (code: string): string => `${code.slice(0, 3)}-${code.slice(3)}`;

/** As it is kept: small letters, spaces and hyphens don't matter. @example bareCode(' km7-a4q ') // 'KM7A4Q' */
export const bareCode = (typed: string): string => typed.toUpperCase().replaceAll(/[\s-]/g, '');

/**
 * Why no piece was found under a code, as far as the code itself shows it.
 *
 * @param code bare
 * @example codeProblem('AAAAAC') // 'AAA-AAC has a mistyped sign: read the label again.'
 */
export function codeProblem(code: string): string {
  if (code === '') return 'Type the code on the label, such as KM3-A4Q.';
  const odd = [...code].find((sign) => !SIGNS.includes(sign));
  if (odd !== undefined) return `There is no “${odd}” in our codes: read the label again.`;
  if (code.length !== LENGTH) return `A code has ${LENGTH} signs, this has ${code.length}: read the label again.`;
  if (checkSum(code) !== 0) return `${unitCodeText(code)} has a mistyped sign: read the label again.`;
  return `No piece has the code ${unitCodeText(code)}: read the label again.`;
}
