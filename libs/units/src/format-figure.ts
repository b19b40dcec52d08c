const MINUS_SIGN = '\u2212';

/**
 * A number as it stands on a page: fixed decimals, the true minus sign (U+2212), and never "minus nothing".
 *
 * @param value A finite number
 * @param decimals Digits after the point, 0 to 20
 * @throws RangeError when the value is not finite: a figure that could not be computed must not reach a page
 * @example formatFigure(-36.75, 1) // '−36.8'
 */
export function formatFigure(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError('Only a finite number can be shown as a figure.');
  const size = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(size) !== 0 ? MINUS_SIGN + size : size;
}
