import { type DecimalString } from '#libs/money';
import { leaf, type XmlNode } from '../xml-node.ts';

/** Writes amounts of one currency. */
export type AmountWriter = (name: string, value: DecimalString | null | undefined) => XmlNode[];

/** Amounts in UBL carry their currency each. */
export function amountsIn(currency: string): AmountWriter {
  return (name, value) => leaf(name, value, { currencyID: currency });
}
