import { type IssuedDocument } from '../../document/invoice-document.ts';
import { type InvoiceLine } from '../../document/invoice-line.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { ublAdjustment } from './ubl-adjustment.ts';
import { amountsIn } from './ubl-amount.ts';
import { taxCategory } from './ubl-tax-category.ts';

/** A line (BG-25), invoiced or credited. */
export function ublLine(line: InvoiceLine, document: Pick<IssuedDocument, 'kind' | 'currency'>): XmlNode[] {
  const amount = amountsIn(document.currency);
  const credited = document.kind === 'credit-note';
  return branch(
    credited ? 'cac:CreditNoteLine' : 'cac:InvoiceLine',
    leaf('cbc:ID', line.id),
    leaf(credited ? 'cbc:CreditedQuantity' : 'cbc:InvoicedQuantity', line.quantity, { unitCode: line.unit }),
    amount('cbc:LineExtensionAmount', line.net),
    ...(line.allowances ?? []).map((allowance) => ublAdjustment('allowance', allowance, { amount })),
    ...(line.charges ?? []).map((charge) => ublAdjustment('charge', charge, { amount })),
    branch(
      'cac:Item',
      leaf('cbc:Description', line.description),
      leaf('cbc:Name', line.name),
      branch('cac:SellersItemIdentification', leaf('cbc:ID', line.itemNumber)),
      taxCategory('cac:ClassifiedTaxCategory', line),
    ),
    branch('cac:Price', amount('cbc:PriceAmount', line.unitPrice), leaf('cbc:BaseQuantity', line.baseQuantity, { unitCode: line.unit })),
  );
}
