import { sumAmounts, toAmount } from '#libs/money';
import { type TotalsInput, type TotalsLineInput } from '../totals/totals-input.ts';
import { type InvoiceDraft } from './invoice-document.ts';
import { type DraftLine } from './invoice-line.ts';

/** The figures of a draft that its sums are computed from. */
export function totalsInputOf(draft: Pick<InvoiceDraft, 'lines' | 'allowances' | 'charges' | 'prepayments' | 'rounding'>): TotalsInput {
  return {
    lines: draft.lines.map(lineInputOf),
    allowances: draft.allowances,
    charges: draft.charges,
    prepaid: toAmount(sumAmounts(draft.prepayments.map((payment) => payment.amount))),
    ...(draft.rounding === undefined ? {} : { rounding: draft.rounding }),
  };
}

/** The figures of a line that its net amount is computed from. */
export function lineInputOf(line: DraftLine): TotalsLineInput {
  return {
    quantity: line.quantity,
    unitPrice: line.unitPrice,
    ...(line.baseQuantity === undefined ? {} : { baseQuantity: line.baseQuantity }),
    allowances: (line.allowances ?? []).map((allowance) => allowance.amount),
    charges: (line.charges ?? []).map((charge) => charge.amount),
    vatCategory: line.vatCategory,
    vatRate: line.vatRate,
  };
}
