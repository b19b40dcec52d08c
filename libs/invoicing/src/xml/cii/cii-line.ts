import { type InvoiceLine } from '../../document/invoice-line.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { ciiAdjustment } from './cii-adjustment.ts';
import { ciiTax } from './cii-tax.ts';

/** A line (BG-25). */
export function ciiLine(line: InvoiceLine): XmlNode[] {
  return branch(
    'ram:IncludedSupplyChainTradeLineItem',
    branch('ram:AssociatedDocumentLineDocument', leaf('ram:LineID', line.id)),
    branch(
      'ram:SpecifiedTradeProduct',
      leaf('ram:SellerAssignedID', line.itemNumber),
      leaf('ram:Name', line.name),
      leaf('ram:Description', line.description),
    ),
    branch(
      'ram:SpecifiedLineTradeAgreement',
      branch(
        'ram:NetPriceProductTradePrice',
        leaf('ram:ChargeAmount', line.unitPrice),
        leaf('ram:BasisQuantity', line.baseQuantity, { unitCode: line.unit }),
      ),
    ),
    branch('ram:SpecifiedLineTradeDelivery', leaf('ram:BilledQuantity', line.quantity, { unitCode: line.unit })),
    branch(
      'ram:SpecifiedLineTradeSettlement',
      ciiTax('ram:ApplicableTradeTax', line),
      ...(line.allowances ?? []).map((allowance) => ciiAdjustment('allowance', allowance)),
      ...(line.charges ?? []).map((charge) => ciiAdjustment('charge', charge)),
      branch('ram:SpecifiedTradeSettlementLineMonetarySummation', leaf('ram:LineTotalAmount', line.net)),
    ),
  );
}
