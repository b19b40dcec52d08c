import { type PriceAdjustment, type TaxTreatment } from '../../document/invoice-line.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';
import { type AmountWriter } from './ubl-amount.ts';
import { taxCategory } from './ubl-tax-category.ts';

/** An allowance or charge of a line, or of the document when it has a VAT category of its own. */
export function ublAdjustment(
  kind: 'allowance' | 'charge',
  adjustment: PriceAdjustment & Partial<TaxTreatment>,
  { amount }: { amount: AmountWriter },
): XmlNode[] {
  const { vatCategory, vatRate } = adjustment;
  return branch(
    'cac:AllowanceCharge',
    leaf('cbc:ChargeIndicator', kind === 'charge' ? 'true' : 'false'),
    leaf('cbc:AllowanceChargeReasonCode', adjustment.reasonCode),
    leaf('cbc:AllowanceChargeReason', adjustment.reason),
    leaf('cbc:MultiplierFactorNumeric', adjustment.percent),
    amount('cbc:Amount', adjustment.amount),
    amount('cbc:BaseAmount', adjustment.baseAmount),
    vatCategory === undefined ? [] : taxCategory('cac:TaxCategory', { vatCategory, vatRate: vatRate ?? null }),
  );
}
