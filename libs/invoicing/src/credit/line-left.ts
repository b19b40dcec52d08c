import { type Decimal, toDecimal } from '#libs/money';
import { type InvoiceDocument } from '../document/invoice-document.ts';
import { type InvoiceLine } from '../document/invoice-line.ts';

/** What of a line has not been credited yet, both with the sign of the line. */
export interface LineLeft {
  readonly quantity: Decimal;
  readonly net: Decimal;
}

/** Net and quantity of a line less what credit notes took of it. */
export function lineLeft(line: InvoiceLine, earlier: readonly Pick<InvoiceDocument, 'lines'>[]): LineLeft {
  const corrections = earlier.flatMap((note) => note.lines).filter((credited) => credited.corrects?.lineId === line.id);
  return {
    quantity: corrections.reduce((left, credited) => left.minus(toDecimal(credited.corrects?.quantity ?? '0')), toDecimal(line.quantity)),
    net: corrections.reduce((left, credited) => left.minus(toDecimal(credited.net)), toDecimal(line.net)),
  };
}
