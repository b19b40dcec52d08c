const ZERO = 48;
const NINE = 57;
const MINUS = 45;
const PLUS = 43;
const DOT = 46;
const COMMA = 44;
const SPACE = 32;
const SMALL_E = 101;
const LARGE_E = 69;
/** A double holds every whole number of this many digits. */
const MOST_EXACT_DIGITS = 15;

/** How numbers are written in one file or column. */
export interface NumberForm {
  decimalMark: '.' | ',';
  /** Unit written behind each value, such as `km/h`; other text behind a number makes it none. */
  suffix: string;
}

/**
 * Reads the number between two places of a line without copying it; NaN when there is none. Hand-written because a log has a million
 * cells.
 */
export function readNumber(text: string, { start, end }: { start: number; end: number }, { decimalMark, suffix }: NumberForm): number {
  const mark = decimalMark === ',' ? COMMA : DOT;
  let at = start;
  let sign = 1;
  const first = text.charCodeAt(at);
  if (first === MINUS || first === PLUS) {
    if (first === MINUS) sign = -1;
    at += 1;
  }
  let value = 0;
  let digits = 0;
  let code = at < end ? text.charCodeAt(at) : 0;
  while (code >= ZERO && code <= NINE) {
    value = value * 10 + (code - ZERO);
    digits += 1;
    at += 1;
    code = at < end ? text.charCodeAt(at) : 0;
  }
  let decimals = 0;
  if (code === mark) {
    at += 1;
    code = at < end ? text.charCodeAt(at) : 0;
    while (code >= ZERO && code <= NINE) {
      value = value * 10 + (code - ZERO);
      decimals += 1;
      at += 1;
      code = at < end ? text.charCodeAt(at) : 0;
    }
  }
  if (digits + decimals === 0) return Number.NaN;
  const mantissaEnd = at;
  let power = -decimals;
  if ((code === SMALL_E || code === LARGE_E) && at + 1 < end) {
    const exponent = /^[eE]([+-]?\d{1,3})/.exec(text.slice(at, Math.min(end, at + 6)));
    if (exponent?.[1] !== undefined) {
      power += Number(exponent[1]);
      at += exponent[0].length;
    }
  }
  while (at < end && text.charCodeAt(at) === SPACE) at += 1;
  if (at < end && (suffix === '' || end - at !== suffix.length || !text.startsWith(suffix, at))) return Number.NaN;
  if (digits + decimals > MOST_EXACT_DIGITS) return Number(text.slice(start, mantissaEnd).replace(',', '.')) * 10 ** (power + decimals);
  if (power === 0) return sign * value;
  return power < 0 ? (sign * value) / 10 ** -power : sign * value * 10 ** power;
}

/** What is written behind the number of a cell, or null when the cell is no number. */
export function textBehindNumber(cell: string): string | null {
  const match = /^[+-]?(?:\d+[.,]?\d*|[.,]\d+)(?:[eE][+-]?\d+)?\s*(.*)$/.exec(cell.trim());
  return match?.[1] ?? null;
}
