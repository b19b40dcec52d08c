import { toDecimal } from '#libs/money';
import { type InvoiceDocument } from '../document/invoice-document.ts';
import { type InvoiceParty } from '../document/party.ts';
import { vatCategories } from '../totals/vat-category.ts';
import { type MissingContent, places } from './missing-content.ts';

/**
 * What a document lacks to be sent as a structured invoice of EN 16931 (UBL or CII). A paper or PDF invoice may go without;
 * sums, codes and reasons are checked when the document is composed and are not repeated here.
 *
 * Source: CEN validation rules of EN 16931, abstract model, read.
 */
export function structuredProblems(document: InvoiceDocument): MissingContent[] {
  return [...partyProblems(document), ...paymentProblems(document), ...categoryProblems(document)];
}

type Problem = Omit<MissingContent, 'mark'>;
const asRead = (problems: readonly Problem[]): MissingContent[] => problems.map((problem) => ({ ...problem, mark: 'read' }));
const has = (text: string | undefined): boolean => text !== undefined && text.trim() !== '';

function partyProblems({ seller, buyer, totals }: InvoiceDocument): MissingContent[] {
  const problems: Problem[] = [];
  const need = (condition: boolean, problem: Problem): void => {
    if (!condition) problems.push(problem);
  };
  const [workshop, customer] = [places.workshop, places.customer];
  need(has(seller.name), { field: 'seller.name', what: 'The name of the workshop', where: workshop, basis: 'BR-06' });
  need(has(seller.address.countryCode), {
    field: 'seller.address.countryCode',
    what: 'The country of the workshop',
    where: workshop,
    basis: 'BR-09',
  });
  need(has(buyer?.name), { field: 'buyer.name', what: "The customer's name", where: customer, basis: 'BR-07' });
  need(has(buyer?.address.countryCode), {
    field: 'buyer.address.countryCode',
    what: "The customer's country",
    where: customer,
    basis: 'BR-11',
  });
  // Outside the scope of VAT no VAT number is sent (BR-O-02), so it cannot be the one.
  const isOutside = totals.vat.some((row) => row.category === 'O');
  need((has(seller.vatId) && !isOutside) || has(seller.legalRegistration?.id), {
    field: isOutside ? 'seller.legalRegistration' : 'seller.vatId',
    what: `A number by which the workshop is known: ${isOutside ? 'the company number' : 'VAT number or company number'}`,
    where: workshop,
    basis: 'BR-CO-26',
  });
  return [
    ...asRead(problems),
    ...vatIdProblems('seller', seller, { where: workshop }),
    ...vatIdProblems('buyer', buyer, { where: customer }),
  ];
}

function vatIdProblems(role: 'seller' | 'buyer', party: InvoiceParty | undefined, { where }: { where: string }): MissingContent[] {
  const vatId = party?.vatId;
  if (!has(vatId) || vatId === undefined || /^[A-Z]{2}[0-9A-Z]/.test(vatId)) return [];
  return asRead([
    {
      field: `${role}.vatId`,
      what: `The two letters of the country before the VAT number "${vatId}", such as IE (EL for Greece)`,
      where,
      basis: 'BR-CO-09',
    },
  ]);
}

function paymentProblems(document: InvoiceDocument): MissingContent[] {
  const problems: Problem[] = [];
  const isOwed = document.kind !== 'credit-note' && toDecimal(document.totals.payable).gt(0);
  if (isOwed && document.dueDate === undefined && !has(document.paymentTerms))
    problems.push({ field: 'dueDate', what: 'By when to pay, or the terms of payment', where: places.draft, basis: 'BR-CO-25' });
  const transfer = document.paymentMeans.find((means) => means.method === 'credit-transfer');
  if (transfer !== undefined && !has(transfer.account?.iban) && !has(transfer.account?.number))
    problems.push({ field: 'paymentMeans', what: 'The account the customer pays into', where: places.workshop, basis: 'BR-61' });
  return asRead(problems);
}

/** S, Z, E and AE take a VAT number or a local tax number; K and G the VAT number itself (BR-S-02 and its sisters). */
function sellerTaxProblems({ seller, taxRepresentative, totals }: InvoiceDocument): Problem[] {
  const categories = totals.vat.map((row) => row.category).filter((category) => category !== 'O');
  const hasVatId = has(seller.vatId) || has(taxRepresentative?.vatId);
  const strict = categories.find((category) => category === 'K' || category === 'G');
  const category = strict ?? categories[0];
  if (category === undefined || hasVatId || (strict === undefined && has(seller.taxRegistrationId))) return [];
  const basis = `BR-${category === 'K' ? 'IC' : category}-02`;
  return [{ field: 'seller.vatId', what: 'The VAT number of the workshop', where: places.workshop, basis }];
}

function categoryProblems(document: InvoiceDocument): MissingContent[] {
  const { totals, exemptions } = document;
  const problems: Problem[] = [...sellerTaxProblems(document)];
  const categories = new Set(totals.vat.map((row) => row.category));
  if (categories.has('O') && categories.size > 1)
    problems.push({
      field: 'lines',
      what: 'A document of its own for what is outside the scope of VAT: category O stands alone',
      where: places.draft,
      basis: 'BR-O-11',
    });
  if (categories.has('AE') && !has(document.buyer?.vatId) && !has(document.buyer?.legalRegistration?.id))
    problems.push({ field: 'buyer.vatId', what: "The customer's VAT number or company number", where: places.customer, basis: 'BR-AE-02' });
  if (categories.has('K')) {
    if (!has(document.buyer?.vatId))
      problems.push({ field: 'buyer.vatId', what: "The customer's VAT number", where: places.customer, basis: 'BR-IC-02' });
    if (document.supplyDate === undefined && document.supplyPeriod === undefined)
      problems.push({ field: 'supplyDate', what: 'The day of delivery', where: places.draft, basis: 'BR-IC-11' });
    if (!has(document.deliverTo?.countryCode))
      problems.push({ field: 'deliverTo', what: 'The country the goods go to', where: places.draft, basis: 'BR-IC-12' });
  }
  for (const category of categories) {
    if (vatCategories[category].reason === 'needed' && !exemptions.some((reason) => reason.category === category && has(reason.text)))
      problems.push({
        field: 'exemptions',
        what: `Why no VAT is charged in category ${category}`,
        where: places.draft,
        basis: `BR-${category === 'K' ? 'IC' : category}-10`,
      });
  }
  return asRead(problems);
}
