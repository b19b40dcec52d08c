import { type PriceAdjustment, type TaxTreatment } from '../../document/invoice-line.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { ciiTax } from './cii-tax.ts';

/** An allowance or charge of a line, or of the document when it has a VAT category of its own. */
export function ciiAdjustment(kind: 'allowance' | 'charge', adjustment: PriceAdjustment & Partial<TaxTreatment>): XmlNode[] {
  const { vatCategory, vatRate } = adjustment;
  return branch(
    'ram:SpecifiedTradeAllowanceCharge',
    branch('ram:ChargeIndicator', leaf('udt:Indicator', kind === 'charge' ? 'true' : 'false')),
    leaf('ram:CalculationPercent', adjustment.percent),
    leaf('ram:BasisAmount', adjustment.baseAmount),
    leaf('ram:ActualAmount', adjustment.amount),
    leaf('ram:ReasonCode', adjustment.reasonCode),
    leaf('ram:Reason', adjustment.reason),
    vatCategory === undefined ? [] : ciiTax('ram:CategoryTradeTax', { vatCategory, vatRate: vatRate ?? null }),
  );
}
