import { type TaxTreatment } from '../../document/invoice-line.ts';
import { vatKey } from '../../totals/vat-key.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';

/** Amounts and ground of a row of the VAT table, written round the category. */
export interface TaxRowFacts {
  readonly tax: string;
  readonly taxable: string;
  readonly reason: { readonly text: string; readonly code?: string } | undefined;
}

/** Category and rate (no rate for category O), with amounts and ground in the VAT table. */
export function ciiTax(name: 'ram:ApplicableTradeTax' | 'ram:CategoryTradeTax', tax: TaxTreatment, row?: TaxRowFacts): XmlNode[] {
  const key = vatKey(tax.vatCategory, tax.vatRate);
  return branch(
    name,
    leaf('ram:CalculatedAmount', row?.tax),
    leaf('ram:TypeCode', 'VAT'),
    leaf('ram:ExemptionReason', row?.reason?.text),
    leaf('ram:BasisAmount', row?.taxable),
    leaf('ram:CategoryCode', key.category),
    leaf('ram:ExemptionReasonCode', row?.reason?.code),
    leaf('ram:RateApplicablePercent', key.rate),
  );
}
