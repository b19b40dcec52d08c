import { toDecimal } from '#libs/money';
import { type InvoiceDocument } from '../document/invoice-document.ts';
import { type InvoiceRules } from './invoice-rules.ts';
import { type MissingContent, places } from './missing-content.ts';

/** Art. 226b: who supplies, what, and the VAT; art. 220a: when a simplified invoice is allowed at all. */
export function missingInSimplified(document: InvoiceDocument, rules: InvoiceRules): MissingContent[] {
  const { seller } = document;
  const missing = notAllowed(document, rules);
  if (seller.name.trim() === '' && seller.vatId === undefined)
    missing.push({
      field: 'seller.name',
      what: 'Who supplies: the name of the workshop',
      where: places.workshop,
      basis: 'art. 226b(b)',
      mark: 'read',
    });
  for (const [index, line] of document.lines.entries()) {
    if (line.name.trim() === '')
      missing.push({
        field: `lines[${index}].name`,
        what: `What line ${index + 1} is for`,
        where: places.draft,
        basis: 'art. 226b(c)',
        mark: 'read',
      });
  }
  return missing;
}

function notAllowed(document: InvoiceDocument, rules: InvoiceRules): MissingContent[] {
  const field = 'form';
  const where = places.draft;
  // A document that amends an invoice may be simplified whatever its amount (art. 220a(1)(b)).
  const amends = document.kind === 'credit-note';
  const limit = rules.simplifiedLimit;
  const missing: MissingContent[] = [];
  if (limit === null && !amends)
    missing.push({
      field,
      what: 'A full invoice: simplified ones are switched off in the settings',
      where,
      basis: 'art. 220a',
      mark: 'read',
    });
  if (limit !== null && !amends && toDecimal(document.totals.taxInclusive).abs().gt(toDecimal(limit)))
    missing.push({
      field,
      what: `A full invoice with the customer's name and address: ${document.totals.taxInclusive} with tax is above the limit of ${limit} for a simplified one`,
      where,
      basis: 'art. 220a and 238',
      mark: 'read',
    });
  const abroad = document.buyer !== undefined && document.buyer.address.countryCode !== document.seller.address.countryCode;
  if (document.totals.vat.some((row) => row.category === 'K' || (row.category === 'AE' && abroad)))
    missing.push({
      field,
      what: 'A full invoice: a supply to another EU country cannot be simplified',
      where,
      basis: 'art. 220a(2)',
      mark: 'read',
    });
  return missing;
}
