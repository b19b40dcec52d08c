import { type IssuedDocument } from '../../document/invoice-document.ts';
import { paymentMeansCodes } from '../../document/payment-means.ts';
import { structuredMeans } from '../structured-facts.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { ciiAdjustment } from './cii-adjustment.ts';
import { ciiDate } from './cii-date.ts';
import { ciiTax } from './cii-tax.ts';

const isZero = (amount: string): boolean => /^-?0(\.0+)?$/.test(amount);

/** Payment, VAT table, allowances, sums and references of the whole document. */
export function ciiSettlement(document: IssuedDocument): XmlNode[] {
  return branch(
    'ram:ApplicableHeaderTradeSettlement',
    leaf('ram:PaymentReference', document.remittance),
    leaf('ram:TaxCurrencyCode', document.accounting?.currency),
    leaf('ram:InvoiceCurrencyCode', document.currency),
    paymentMeans(document),
    vatTable(document),
    branch(
      'ram:BillingSpecifiedPeriod',
      ciiDate('ram:StartDateTime', document.supplyPeriod?.start),
      ciiDate('ram:EndDateTime', document.supplyPeriod?.end),
    ),
    ...document.allowances.map((allowance) => ciiAdjustment('allowance', allowance)),
    ...document.charges.map((charge) => ciiAdjustment('charge', charge)),
    branch(
      'ram:SpecifiedTradePaymentTerms',
      leaf('ram:Description', document.paymentTerms),
      ciiDate('ram:DueDateDateTime', document.dueDate),
    ),
    summation(document),
    document.preceding.flatMap(({ number, issueDate }) =>
      branch(
        'ram:InvoiceReferencedDocument',
        leaf('ram:IssuerAssignedID', number),
        ciiDate('ram:FormattedIssueDateTime', issueDate, 'qdt:DateTimeString'),
      ),
    ),
  );
}

function paymentMeans(document: IssuedDocument): XmlNode[] {
  return structuredMeans(document).flatMap(({ method, words, account }) =>
    branch(
      'ram:SpecifiedTradeSettlementPaymentMeans',
      leaf('ram:TypeCode', paymentMeansCodes[method]),
      leaf('ram:Information', words),
      branch(
        'ram:PayeePartyCreditorFinancialAccount',
        leaf('ram:IBANID', account?.iban),
        leaf('ram:AccountName', account?.name),
        leaf('ram:ProprietaryID', account?.iban === undefined ? account?.number : undefined),
      ),
      branch('ram:PayeeSpecifiedCreditorFinancialInstitution', leaf('ram:BICID', account?.bic)),
    ),
  );
}

function vatTable({ totals, exemptions }: IssuedDocument): XmlNode[] {
  return totals.vat.flatMap((row) =>
    ciiTax(
      'ram:ApplicableTradeTax',
      { vatCategory: row.category, vatRate: row.rate },
      { tax: row.tax, taxable: row.taxable, reason: exemptions.find((reason) => reason.category === row.category) },
    ),
  );
}

function summation({ totals, currency, accounting, allowances, charges }: IssuedDocument): XmlNode[] {
  return branch(
    'ram:SpecifiedTradeSettlementHeaderMonetarySummation',
    leaf('ram:LineTotalAmount', totals.lineTotal),
    charges.length === 0 ? [] : leaf('ram:ChargeTotalAmount', totals.chargeTotal),
    allowances.length === 0 ? [] : leaf('ram:AllowanceTotalAmount', totals.allowanceTotal),
    leaf('ram:TaxBasisTotalAmount', totals.taxExclusive),
    // The only amounts of CII that name their currency.
    leaf('ram:TaxTotalAmount', totals.vatTotal, { currencyID: currency }),
    accounting === undefined ? [] : leaf('ram:TaxTotalAmount', accounting.vatTotal, { currencyID: accounting.currency }),
    isZero(totals.rounding) ? [] : leaf('ram:RoundingAmount', totals.rounding),
    leaf('ram:GrandTotalAmount', totals.taxInclusive),
    isZero(totals.prepaid) ? [] : leaf('ram:TotalPrepaidAmount', totals.prepaid),
    leaf('ram:DuePayableAmount', totals.payable),
  );
}
