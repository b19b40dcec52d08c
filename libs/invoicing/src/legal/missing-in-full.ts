import { type InvoiceDocument } from '../document/invoice-document.ts';
import { type InvoiceParty } from '../document/party.ts';
import { vatCategories, type VatCategory } from '../totals/vat-category.ts';
import { type InvoiceRules } from './invoice-rules.ts';
import { type MissingContent, places } from './missing-content.ts';

/** Art. 226 of Directive 2006/112/EC, point by point. Points 8 to 10 (amounts, rates, VAT) are always there: they are computed. */
export function missingInFull(document: InvoiceDocument, rules: InvoiceRules): MissingContent[] {
  return [
    ...missingVatIds(document),
    ...missingParties(document),
    ...missingSupply(document),
    ...missingGrounds(document),
    ...missingMarks(document, rules),
  ];
}

const has = (text: string | undefined): boolean => text !== undefined && text.trim() !== '';

function missingVatIds({ seller, buyer, taxRepresentative, totals }: InvoiceDocument): MissingContent[] {
  const among = (...categories: readonly VatCategory[]): boolean => totals.vat.some((row) => categories.includes(row.category));
  const missing: MissingContent[] = [];
  const sellerIsKnown = has(seller.vatId) || has(seller.taxRegistrationId) || has(taxRepresentative?.vatId);
  if (!sellerIsKnown && among('S', 'Z', 'E', 'AE', 'K', 'G'))
    missing.push({
      field: 'seller.vatId',
      what: 'The VAT number of the workshop',
      where: places.workshop,
      basis: 'art. 226(3)',
      mark: 'read',
    });
  if (!has(buyer?.vatId) && among('AE', 'K'))
    missing.push({
      field: 'buyer.vatId',
      what: `The customer's VAT number: ${among('K') ? 'the goods go to another EU country' : 'the customer owes the VAT'}`,
      where: places.customer,
      basis: 'art. 226(4)',
      mark: 'read',
    });
  if (taxRepresentative !== undefined && !(has(taxRepresentative.name) && has(taxRepresentative.vatId) && hasAddress(taxRepresentative)))
    missing.push({
      field: 'taxRepresentative',
      what: 'Name, address and VAT number of the tax representative',
      where: places.workshop,
      basis: 'art. 226(15)',
      mark: 'from-memory',
    });
  return missing;
}

function hasAddress(party: InvoiceParty): boolean {
  const { lines, city, postcode, countryCode } = party.address;
  return lines.some((line) => has(line)) && (has(city) || has(postcode)) && has(countryCode);
}

function missingParties({ seller, buyer }: InvoiceDocument): MissingContent[] {
  const basis = 'art. 226(5)';
  const mark = 'read';
  const missing: MissingContent[] = [];
  if (!has(seller.name)) missing.push({ field: 'seller.name', what: 'The full name of the workshop', where: places.workshop, basis, mark });
  if (!hasAddress(seller))
    missing.push({
      field: 'seller.address',
      what: 'The full address of the workshop: street, town, country',
      where: places.workshop,
      basis,
      mark,
    });
  if (!has(buyer?.name)) missing.push({ field: 'buyer.name', what: "The customer's full name", where: places.customer, basis, mark });
  if (buyer === undefined || !hasAddress(buyer))
    missing.push({
      field: 'buyer.address',
      what: "The customer's full address: street, town, country",
      where: places.customer,
      basis,
      mark,
    });
  return missing;
}

function missingSupply(document: InvoiceDocument): MissingContent[] {
  const missing = document.lines.flatMap((line, index): MissingContent[] =>
    has(line.name)
      ? []
      : [
          {
            field: `lines[${index}].name`,
            what: `What line ${index + 1} is for: the part or the work`,
            where: places.draft,
            basis: 'art. 226(6)',
            mark: 'read',
          },
        ],
  );
  const dated = document.supplyDate !== undefined || document.supplyPeriod?.end !== undefined || document.kind === 'credit-note';
  if (!dated)
    missing.push({
      field: 'supplyDate',
      what: document.kind === 'deposit-invoice' ? 'The day the deposit was received' : 'The day the work was finished',
      where: places.draft,
      basis: 'art. 226(7)',
      mark: 'read',
    });
  return missing;
}

function missingGrounds({ totals, exemptions }: InvoiceDocument): MissingContent[] {
  return totals.vat
    .filter((row) => vatCategories[row.category].reason === 'needed')
    .filter((row) => !exemptions.some((reason) => reason.category === row.category && has(reason.text)))
    .map((row) => ({
      field: 'exemptions',
      what: `Why no VAT is charged in category ${row.category} (${vatCategories[row.category].words}): the article or the words of the law`,
      where: places.draft,
      basis: row.category === 'AE' ? 'art. 226(11a)' : 'art. 226(11)',
      mark: 'from-memory',
    }));
}

function missingMarks(document: InvoiceDocument, rules: InvoiceRules): MissingContent[] {
  const missing: MissingContent[] = [];
  if (rules.cashAccounting && !document.legalMarks.includes('cash-accounting'))
    missing.push({
      field: 'legalMarks',
      what: 'The words "Cash accounting": VAT is due when paid',
      where: places.settings,
      basis: 'art. 226(7a)',
      mark: 'from-memory',
    });
  const { accountingCurrency } = rules;
  if (accountingCurrency !== null && document.currency !== accountingCurrency && document.accounting?.currency !== accountingCurrency)
    missing.push({
      field: 'accounting',
      what: `The VAT total in ${accountingCurrency}, with the rate of exchange`,
      where: places.draft,
      basis: 'art. 230',
      mark: 'from-memory',
    });
  return missing;
}
