/** As a person writes a figure: a sign of any kind, a comma or a point, no thousands. */
const FIGURE = /^[-+\u2212]?(\d{1,7}([.,]\d{0,6})?|[.,]\d{1,6})$/;

/** @returns the number, or undefined where the text is none. @example readFigure('−14,5') // -14.5 */
export function readFigure(text: string): number | undefined {
  if (!FIGURE.test(text)) return undefined;
  return Number(text.replace('\u2212', '-').replace(',', '.'));
}
