import { type IssuedDocument } from '../../document/invoice-document.ts';
import { branch, type XmlNode } from '../xml-node.ts';
import { amountsIn } from './ubl-amount.ts';
import { taxCategory } from './ubl-tax-category.ts';

const isZero = (amount: string): boolean => /^-?0(\.0+)?$/.test(amount);

/** VAT table (BG-23), and the VAT total in the currency of the tax office where that is another. */
export function ublTax({ totals, currency, exemptions, accounting }: IssuedDocument): XmlNode[] {
  const amount = amountsIn(currency);
  const rows = totals.vat.map((row) =>
    branch(
      'cac:TaxSubtotal',
      amount('cbc:TaxableAmount', row.taxable),
      amount('cbc:TaxAmount', row.tax),
      taxCategory(
        'cac:TaxCategory',
        { vatCategory: row.category, vatRate: row.rate },
        exemptions.find((reason) => reason.category === row.category),
      ),
    ),
  );
  return [
    ...branch('cac:TaxTotal', amount('cbc:TaxAmount', totals.vatTotal), ...rows),
    ...(accounting === undefined ? [] : branch('cac:TaxTotal', amountsIn(accounting.currency)('cbc:TaxAmount', accounting.vatTotal))),
  ];
}

/** Sums of the document (BG-22); sums of what is not there are left out. */
export function ublMonetaryTotal({ totals, currency, allowances, charges }: IssuedDocument): XmlNode[] {
  const amount = amountsIn(currency);
  return branch(
    'cac:LegalMonetaryTotal',
    amount('cbc:LineExtensionAmount', totals.lineTotal),
    amount('cbc:TaxExclusiveAmount', totals.taxExclusive),
    amount('cbc:TaxInclusiveAmount', totals.taxInclusive),
    allowances.length === 0 ? [] : amount('cbc:AllowanceTotalAmount', totals.allowanceTotal),
    charges.length === 0 ? [] : amount('cbc:ChargeTotalAmount', totals.chargeTotal),
    isZero(totals.prepaid) ? [] : amount('cbc:PrepaidAmount', totals.prepaid),
    isZero(totals.rounding) ? [] : amount('cbc:PayableRoundingAmount', totals.rounding),
    amount('cbc:PayableAmount', totals.payable),
  );
}
