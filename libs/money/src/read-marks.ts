/** Which mark parts the whole from the decimals on this site, when the typed text alone cannot tell. */
export type DecimalMark = '.' | ',';

export type MarksRead =
  { readonly ok: true; readonly whole: string; readonly fraction: string } | { readonly ok: false; readonly message: string };

const refuse = (message: string): MarksRead => ({ ok: false, message });

/**
 * Finds out which points and commas group thousands and which one starts the decimals. One mark with exactly three digits
 * after it can be either: it is refused unless the site's own mark is known.
 *
 * @param text digits, points, commas, apostrophes and spaces only
 * @example readMarks('1.234,50', undefined) // { ok: true, whole: '1234', fraction: '50' }
 */
export function readMarks(text: string, habit: DecimalMark | undefined): MarksRead {
  const decimalAt = findDecimalMark(text, habit);
  if (decimalAt === 'ambiguous') return refuse(ambiguityWords(text));
  const wholeText = decimalAt === null ? text : text.slice(0, decimalAt);
  const fraction = decimalAt === null ? '' : text.slice(decimalAt + 1);
  if (decimalAt !== null && !/^\d+$/.test(fraction))
    return refuse(`"${text}" has no plain digits after its last mark. Write it such as 1234.50.`);
  const whole = ungroup(wholeText);
  if (whole === null) return refuse(`In "${text}" the thousands are not in groups of three. Write it without grouping, such as 1234.50.`);
  return { ok: true, whole, fraction };
}

function findDecimalMark(text: string, habit: DecimalMark | undefined): number | null | 'ambiguous' {
  const lastPoint = text.lastIndexOf('.');
  const lastComma = text.lastIndexOf(',');
  if (lastPoint < 0 && lastComma < 0) return null;
  if (lastPoint >= 0 && lastComma >= 0) return Math.max(lastPoint, lastComma);
  const at = Math.max(lastPoint, lastComma);
  const mark = text.charAt(at);
  if (text.indexOf(mark) !== at) return null;
  if (!/^[1-9]\d{0,2}[.,]\d{3}$/.test(text)) return at;
  if (habit === undefined) return 'ambiguous';
  return mark === habit ? at : null;
}

function ungroup(text: string): string | null {
  if (text === '') return '0';
  const plain = text.replace(/[.,'’ ]/g, '');
  const kinds = new Set(text.replace(/\d/g, ''));
  if (kinds.size === 0) return plain;
  if (kinds.size > 1) return null;
  const groups = text.split(/[.,'’ ]/);
  const [first = '', ...others] = groups;
  const byThree = /^\d{1,3}$/.test(first) && others.every((group) => /^\d{3}$/.test(group));
  // India groups 12,34,567: the last three, then twos.
  const byTwo =
    /^\d{1,2}$/.test(first) && /^\d{3}$/.test(others.at(-1) ?? '') && others.slice(0, -1).every((group) => /^\d{2}$/.test(group));
  return byThree || byTwo ? plain : null;
}

function ambiguityWords(text: string): string {
  const [whole = '', decimals = ''] = text.split(/[.,]/);
  return `"${text}" can mean ${whole}${decimals} or ${whole} and a fraction. Type ${whole}${decimals}.00 for the first, ${whole}.${decimals}0 for the second.`;
}
