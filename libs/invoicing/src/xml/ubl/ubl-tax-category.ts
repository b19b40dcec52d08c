import { type TaxTreatment } from '../../document/invoice-line.ts';
import { vatKey } from '../../totals/vat-key.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';

export interface TaxReason {
  readonly code?: string;
  readonly text: string;
}

/** `cac:TaxScheme`, VAT unless said. */
export function taxScheme(id = 'VAT'): XmlNode[] {
  return branch('cac:TaxScheme', leaf('cbc:ID', id));
}

/** Category and rate (no rate for category O, BR-O-05), with the ground for no VAT in the VAT table. */
export function taxCategory(name: 'cac:TaxCategory' | 'cac:ClassifiedTaxCategory', tax: TaxTreatment, reason?: TaxReason): XmlNode[] {
  const key = vatKey(tax.vatCategory, tax.vatRate);
  return branch(
    name,
    leaf('cbc:ID', key.category),
    leaf('cbc:Percent', key.rate),
    leaf('cbc:TaxExemptionReasonCode', reason?.code),
    leaf('cbc:TaxExemptionReason', reason?.text),
    taxScheme(),
  );
}
