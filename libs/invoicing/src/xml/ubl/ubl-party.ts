import { type InvoiceParty, type PostalAddress, type SchemedId } from '../../document/party.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { taxScheme } from './ubl-tax-category.ts';

/** `cac:Party` of the seller or buyer (BG-4, BG-7). */
export function ublParty(party: InvoiceParty): XmlNode[] {
  return branch(
    'cac:Party',
    party.electronicAddress === undefined
      ? []
      : leaf('cbc:EndpointID', party.electronicAddress.id, { schemeID: party.electronicAddress.schemeId }),
    branch('cac:PartyName', leaf('cbc:Name', party.tradingName)),
    ublAddress('cac:PostalAddress', party.address),
    taxNumber(party.vatId, 'VAT'),
    // Any scheme but VAT marks the local tax number (BT-32).
    taxNumber(party.taxRegistrationId, 'TAX'),
    branch(
      'cac:PartyLegalEntity',
      leaf('cbc:RegistrationName', party.name),
      schemedId('cbc:CompanyID', party.legalRegistration),
      leaf('cbc:CompanyLegalForm', party.legalNote),
    ),
    branch(
      'cac:Contact',
      leaf('cbc:Name', party.contact?.name),
      leaf('cbc:Telephone', party.contact?.phone),
      leaf('cbc:ElectronicMail', party.contact?.email),
    ),
  );
}

/** The seller's tax representative (BG-11), which is written shorter. */
export function ublTaxRepresentative(party: InvoiceParty | undefined): XmlNode[] {
  if (party === undefined) return [];
  return branch(
    'cac:TaxRepresentativeParty',
    branch('cac:PartyName', leaf('cbc:Name', party.name)),
    ublAddress('cac:PostalAddress', party.address),
    taxNumber(party.vatId, 'VAT'),
  );
}

/** An address under the given element name. */
export function ublAddress(name: 'cac:PostalAddress' | 'cac:Address', address: PostalAddress): XmlNode[] {
  const [street, second, third] = address.lines;
  return branch(
    name,
    leaf('cbc:StreetName', street),
    leaf('cbc:AdditionalStreetName', second),
    leaf('cbc:CityName', address.city),
    leaf('cbc:PostalZone', address.postcode),
    leaf('cbc:CountrySubentity', address.region),
    branch('cac:AddressLine', leaf('cbc:Line', third)),
    branch('cac:Country', leaf('cbc:IdentificationCode', address.countryCode)),
  );
}

function taxNumber(id: string | undefined, scheme: 'VAT' | 'TAX'): XmlNode[] {
  return id === undefined ? [] : branch('cac:PartyTaxScheme', leaf('cbc:CompanyID', id), taxScheme(scheme));
}

function schemedId(name: string, id: SchemedId | undefined): XmlNode[] {
  return leaf(name, id?.id, id?.schemeId === undefined ? {} : { schemeID: id.schemeId });
}
