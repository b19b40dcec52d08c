import { type InvoiceParty, type PostalAddress } from '../../document/party.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';

/** Seller or buyer (BG-4, BG-7). */
export function ciiParty(name: 'ram:SellerTradeParty' | 'ram:BuyerTradeParty', party: InvoiceParty): XmlNode[] {
  const { legalRegistration, contact, electronicAddress } = party;
  return branch(
    name,
    leaf('ram:Name', party.name),
    leaf('ram:Description', party.legalNote),
    branch(
      'ram:SpecifiedLegalOrganization',
      leaf('ram:ID', legalRegistration?.id, legalRegistration?.schemeId === undefined ? {} : { schemeID: legalRegistration.schemeId }),
      leaf('ram:TradingBusinessName', party.tradingName),
    ),
    branch(
      'ram:DefinedTradeContact',
      leaf('ram:PersonName', contact?.name),
      branch('ram:TelephoneUniversalCommunication', leaf('ram:CompleteNumber', contact?.phone)),
      branch('ram:EmailURIUniversalCommunication', leaf('ram:URIID', contact?.email)),
    ),
    ciiAddress(party.address),
    electronicAddress === undefined
      ? []
      : branch('ram:URIUniversalCommunication', leaf('ram:URIID', electronicAddress.id, { schemeID: electronicAddress.schemeId })),
    taxNumber(party.vatId, 'VA'),
    taxNumber(party.taxRegistrationId, 'FC'),
  );
}

/** The seller's tax representative (BG-11), which is written shorter. */
export function ciiTaxRepresentative(party: InvoiceParty | undefined): XmlNode[] {
  if (party === undefined) return [];
  return branch(
    'ram:SellerTaxRepresentativeTradeParty',
    leaf('ram:Name', party.name),
    ciiAddress(party.address),
    taxNumber(party.vatId, 'VA'),
  );
}

export function ciiAddress(address: PostalAddress): XmlNode[] {
  const [first, second, third] = address.lines;
  return branch(
    'ram:PostalTradeAddress',
    leaf('ram:PostcodeCode', address.postcode),
    leaf('ram:LineOne', first),
    leaf('ram:LineTwo', second),
    leaf('ram:LineThree', third),
    leaf('ram:CityName', address.city),
    leaf('ram:CountryID', address.countryCode),
    leaf('ram:CountrySubDivisionName', address.region),
  );
}

function taxNumber(id: string | undefined, scheme: 'VA' | 'FC'): XmlNode[] {
  return branch('ram:SpecifiedTaxRegistration', leaf('ram:ID', id, { schemeID: scheme }));
}
