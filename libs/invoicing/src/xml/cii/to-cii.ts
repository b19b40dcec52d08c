import { documentTypeCodes, type InvoiceDocument } from '../../document/invoice-document.ts';
import { coreProfile, type XmlProfile } from '../profile.ts';
import { type AddressedDocument, asAddressed, invoicedObject, documentNotes, withoutVatId } from '../structured-facts.ts';
import { writeXml } from '../write-xml.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { ciiDate } from './cii-date.ts';
import { ciiLine } from './cii-line.ts';
import { ciiAddress, ciiParty, ciiTaxRepresentative } from './cii-party.ts';
import { ciiSettlement } from './cii-settlement.ts';

const standard = 'urn:un:unece:uncefact:data:standard';

/**
 * The document as UN/CEFACT Cross Industry Invoice D16B, the form that a hybrid PDF carries. Credit notes are the same root
 * with type 381 and a reference to the original. Outside the scope of VAT the VAT numbers are left out (BR-O-02).
 *
 * Source: EN 16931-3-3 as shown by the CEN examples and validation rules, read; order of elements after the published schema
 * of the EN 16931 profile of Factur-X 1.07.3, read.
 *
 * @param document issued, with a buyer; ask {@link structuredProblems} first
 * @param profile BT-24 and BT-23, the core of EN 16931 unless said
 * @throws InvoicingError `not-issued` without number, date or buyer
 */
export function toCii(document: InvoiceDocument, profile: XmlProfile = coreProfile): string {
  const issued = withoutVatId(asAddressed(document));
  const root: XmlNode = {
    name: 'rsm:CrossIndustryInvoice',
    attributes: {},
    text: null,
    children: [
      ...context(profile),
      ...head(issued),
      ...branch(
        'rsm:SupplyChainTradeTransaction',
        ...issued.lines.map(ciiLine),
        agreement(issued),
        delivery(issued),
        ciiSettlement(issued),
      ),
    ],
  };
  return writeXml(root, {
    rsm: `${standard}:CrossIndustryInvoice:100`,
    ram: `${standard}:ReusableAggregateBusinessInformationEntity:100`,
    qdt: `${standard}:QualifiedDataType:100`,
    udt: `${standard}:UnqualifiedDataType:100`,
  });
}

function context(profile: XmlProfile): XmlNode[] {
  return branch(
    'rsm:ExchangedDocumentContext',
    branch('ram:BusinessProcessSpecifiedDocumentContextParameter', leaf('ram:ID', profile.processId)),
    branch('ram:GuidelineSpecifiedDocumentContextParameter', leaf('ram:ID', profile.customizationId)),
  );
}

function head(document: AddressedDocument): XmlNode[] {
  return branch(
    'rsm:ExchangedDocument',
    leaf('ram:ID', document.number),
    leaf('ram:TypeCode', documentTypeCodes[document.kind]),
    ciiDate('ram:IssueDateTime', document.issueDate),
    ...documentNotes(document).map(({ text, subjectCode }) =>
      branch('ram:IncludedNote', leaf('ram:Content', text), leaf('ram:SubjectCode', subjectCode)),
    ),
  );
}

function agreement(document: AddressedDocument): XmlNode[] {
  const object = invoicedObject(document);
  const reference = (name: string, id: string | undefined): XmlNode[] => branch(name, leaf('ram:IssuerAssignedID', id));
  return branch(
    'ram:ApplicableHeaderTradeAgreement',
    leaf('ram:BuyerReference', document.buyerReference),
    ciiParty('ram:SellerTradeParty', document.seller),
    ciiParty('ram:BuyerTradeParty', document.buyer),
    ciiTaxRepresentative(document.taxRepresentative),
    reference('ram:BuyerOrderReferencedDocument', document.orderReference),
    reference('ram:ContractReferencedDocument', document.contractReference),
    // 130 marks the invoiced object (BT-18).
    object === undefined
      ? []
      : branch('ram:AdditionalReferencedDocument', leaf('ram:IssuerAssignedID', object), leaf('ram:TypeCode', '130')),
  );
}

/** The element must be there even when it has nothing to say. */
function delivery({ supplyDate, deliverTo }: AddressedDocument): XmlNode[] {
  const children = [
    ...(deliverTo === undefined ? [] : branch('ram:ShipToTradeParty', ciiAddress(deliverTo))),
    ...branch('ram:ActualDeliverySupplyChainEvent', ciiDate('ram:OccurrenceDateTime', supplyDate)),
  ];
  return [{ name: 'ram:ApplicableHeaderTradeDelivery', attributes: {}, text: null, children }];
}
