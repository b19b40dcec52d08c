import { type InvoiceDocument, type IssuedDocument, type LegalMark } from '../document/invoice-document.ts';
import { type InvoiceParty } from '../document/party.ts';
import { type PaymentMeans } from '../document/payment-means.ts';
import { InvoicingError } from '../invoicing-error.ts';

/** An issued document with a buyer: what the structured forms need. */
export interface AddressedDocument extends IssuedDocument {
  readonly buyer: InvoiceParty;
}

/**
 * A document that has number, date and buyer, so that it can be written as XML.
 *
 * @throws InvoicingError `not-issued`; a simplified invoice without a customer has no structured form
 */
export function asAddressed(document: InvoiceDocument): AddressedDocument {
  const { number, issueDate, buyer } = document;
  if (number === null || issueDate === null || buyer === undefined)
    throw new InvoicingError('not-issued', 'A structured invoice needs a number, a date of issue and a customer.');
  return { ...document, number, issueDate, buyer };
}

/** Outside the scope of VAT no party may show a VAT number (BR-O-02 to 04). */
export function withoutVatId(document: AddressedDocument): AddressedDocument {
  if (!document.totals.vat.some((row) => row.category === 'O')) return document;
  return {
    ...document,
    taxRepresentative: undefined,
    seller: { ...document.seller, vatId: undefined },
    buyer: { ...document.buyer, vatId: undefined },
  };
}

const legalWords: Readonly<Record<LegalMark, string>> = {
  'cash-accounting': 'Cash accounting',
  'self-billing': 'Self-billing',
  'margin-scheme-second-hand': 'Margin scheme - Second-hand goods',
};

/** A note with its subject (UNTDID 4451), where it has one. */
export interface DocumentNote {
  readonly text: string;
  readonly subjectCode?: string;
}

/** Notes of the document, its legal marks and the ground of a correction, in the order they are printed. */
export function documentNotes(document: InvoiceDocument): DocumentNote[] {
  const marks = document.legalMarks.map((mark) => ({ text: legalWords[mark], subjectCode: 'REG' }));
  const correction = document.correctionReason === undefined ? [] : [{ text: document.correctionReason, subjectCode: 'ACB' }];
  return [...correction, ...marks, ...document.notes];
}

/** The thing invoiced (BT-18): the vehicle by its registration, else its VIN. */
export function invoicedObject(document: InvoiceDocument): string | undefined {
  return document.job?.vehicle?.registration ?? document.job?.vehicle?.vin;
}

/**
 * The ways to pay that a structured invoice can carry: one method, said in words once (UBL-SR-46, UBL-SR-47), with as many
 * accounts as there are. The page shows the others.
 */
export function structuredMeans({ paymentMeans }: InvoiceDocument): readonly PaymentMeans[] {
  const [first] = paymentMeans;
  return paymentMeans
    .filter((means) => means.method === first?.method)
    .map((means, index) =>
      index === 0 ? means : { method: means.method, ...(means.account === undefined ? {} : { account: means.account }) },
    );
}
