import { documentTypeCodes, type InvoiceDocument } from '../../document/invoice-document.ts';
import { coreProfile, type XmlProfile } from '../profile.ts';
import { type AddressedDocument, asAddressed, invoicedObject, documentNotes, withoutVatId } from '../structured-facts.ts';
import { writeXml } from '../write-xml.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { ublAdjustment } from './ubl-adjustment.ts';
import { amountsIn } from './ubl-amount.ts';
import { ublLine } from './ubl-line.ts';
import { ublAddress, ublParty, ublTaxRepresentative } from './ubl-party.ts';
import { ublPayment } from './ubl-payment.ts';
import { ublMonetaryTotal, ublTax } from './ubl-totals.ts';

const namespaceOf = (root: 'Invoice' | 'CreditNote'): string => `urn:oasis:names:specification:ubl:schema:xsd:${root}-2`;

/**
 * The document as UBL 2.1: `Invoice` (types 380 and 386) or `CreditNote` (type 381, positive amounts, referring to the
 * original). Elements stand in the order of the OASIS schema. Outside the scope of VAT the VAT numbers are left out
 * (BR-O-02).
 *
 * Source: EN 16931-3-2 as shown by the CEN examples and validation rules, read; order of elements in OASIS UBL 2.1 from memory.
 *
 * @param document issued, with a buyer; ask {@link structuredProblems} first
 * @param profile BT-24 and BT-23, the core of EN 16931 unless said
 * @throws InvoicingError `not-issued` without number, date or buyer
 */
export function toUbl(document: InvoiceDocument, profile: XmlProfile = coreProfile): string {
  const issued = withoutVatId(asAddressed(document));
  const name = issued.kind === 'credit-note' ? 'CreditNote' : 'Invoice';
  const root: XmlNode = {
    name,
    attributes: {},
    text: null,
    children: [
      ...head(issued, profile),
      ...references(issued),
      ...parties(issued),
      ...delivery(issued),
      ...ublPayment(issued),
      ...adjustments(issued),
      ...ublTax(issued),
      ...ublMonetaryTotal(issued),
      ...issued.lines.flatMap((line) => ublLine(line, issued)),
    ],
  };
  return writeXml(root, {
    '': namespaceOf(name),
    cac: 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
    cbc: 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
  });
}

function head(document: AddressedDocument, profile: XmlProfile): XmlNode[] {
  const isCredit = document.kind === 'credit-note';
  return [
    ...leaf('cbc:CustomizationID', profile.customizationId),
    ...leaf('cbc:ProfileID', profile.processId),
    ...leaf('cbc:ID', document.number),
    ...leaf('cbc:IssueDate', document.issueDate),
    ...(isCredit ? [] : leaf('cbc:DueDate', document.dueDate)),
    ...leaf(isCredit ? 'cbc:CreditNoteTypeCode' : 'cbc:InvoiceTypeCode', documentTypeCodes[document.kind]),
    ...documentNotes(document).flatMap(({ text, subjectCode }) =>
      leaf('cbc:Note', subjectCode === undefined ? text : `#${subjectCode}#${text}`),
    ),
    ...leaf('cbc:DocumentCurrencyCode', document.currency),
    ...leaf('cbc:TaxCurrencyCode', document.accounting?.currency),
    ...leaf('cbc:BuyerReference', document.buyerReference),
    ...branch('cac:InvoicePeriod', leaf('cbc:StartDate', document.supplyPeriod?.start), leaf('cbc:EndDate', document.supplyPeriod?.end)),
  ];
}

function references(document: AddressedDocument): XmlNode[] {
  const object = invoicedObject(document);
  const contract = branch('cac:ContractDocumentReference', leaf('cbc:ID', document.contractReference));
  return [
    ...branch('cac:OrderReference', leaf('cbc:ID', document.orderReference)),
    ...document.preceding.flatMap(({ number, issueDate }) =>
      branch('cac:BillingReference', branch('cac:InvoiceDocumentReference', leaf('cbc:ID', number), leaf('cbc:IssueDate', issueDate))),
    ),
    ...contract,
    // 130 marks the invoiced object (BT-18).
    ...(object === undefined ? [] : branch('cac:AdditionalDocumentReference', leaf('cbc:ID', object), leaf('cbc:DocumentTypeCode', '130'))),
  ];
}

function parties(document: AddressedDocument): XmlNode[] {
  return [
    ...branch('cac:AccountingSupplierParty', ublParty(document.seller)),
    ...branch('cac:AccountingCustomerParty', ublParty(document.buyer)),
    ...ublTaxRepresentative(document.taxRepresentative),
  ];
}

function delivery({ supplyDate, deliverTo }: AddressedDocument): XmlNode[] {
  return branch(
    'cac:Delivery',
    leaf('cbc:ActualDeliveryDate', supplyDate),
    deliverTo === undefined ? [] : branch('cac:DeliveryLocation', ublAddress('cac:Address', deliverTo)),
  );
}

function adjustments({ allowances, charges, currency }: AddressedDocument): XmlNode[] {
  const amount = amountsIn(currency);
  return [
    ...allowances.flatMap((allowance) => ublAdjustment('allowance', allowance, { amount })),
    ...charges.flatMap((charge) => ublAdjustment('charge', charge, { amount })),
  ];
}
