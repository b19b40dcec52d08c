import { Decimal as DecimalJs } from 'decimal.js';

/**
 * The one constructor for exact decimals in this project: 40 significant digits, half away from zero, never an exponent
 * in the text. A clone of its own, so that no other code's settings can change it.
 *
 * 40 digits hold any quantity times any price that {@link isDecimalString} lets through without rounding.
 *
 * @example new Decimal('0.1').plus('0.2').toFixed() // '0.3'
 */
export const Decimal = DecimalJs.clone({
  precision: 40,
  rounding: DecimalJs.ROUND_HALF_UP,
  toExpNeg: -9e15,
  toExpPos: 9e15,
});
export type Decimal = DecimalJs;

/** A plain decimal as text, such as '12.50': a point, no grouping, no exponent. The form in which money crosses borders. */
export type DecimalString = string;
