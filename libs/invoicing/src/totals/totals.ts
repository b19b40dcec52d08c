import { done, type Outcome, refused } from '../outcome.ts';
import { checkTotalsInput } from './check-totals-input.ts';
import { computeTotals } from './compute-totals.ts';
import { type Totals, type TotalsInput } from './totals-input.ts';

/** The sums, and what a person should know about them. */
export interface TotalsAnswer extends Totals {
  readonly warnings: readonly string[];
}

/**
 * Sums of an invoice from what was entered, or the list of what to change. Lines net to two decimals, VAT per category and
 * rate, halves away from zero on the magnitude. Rates compare as numbers (21 = 21.00); category O takes no rate.
 *
 * Source: EN 16931 and the CEN validation rules 1.3.16, read. The official rule set lets VAT be wrong by less than 1.00; here
 * it is exact.
 *
 * @param input decimal texts, as {@link TotalsInput}; anything may come
 * @example totals({ lines: [{ quantity: '2', unitPrice: '31.90', vatCategory: 'S', vatRate: '20' }] })
 * // { ok: true, value: { taxExclusive: '63.80', vatTotal: '12.76', payable: '76.56', … } }
 */
export function totals(input: unknown): Outcome<TotalsAnswer> {
  const errors = checkTotalsInput(input);
  if (errors.length > 0) return refused(errors);
  const sums = computeTotals(input as TotalsInput);
  return done({ ...sums, warnings: warningsOf(sums) });
}

function warningsOf(sums: Totals): string[] {
  const outside = sums.vat.some((row) => row.category === 'O');
  if (!outside || sums.vat.length === 1) return [];
  return [
    'Category O (outside the scope of VAT) stands beside other categories: the sums are right, but EN 16931 wants it on a document of its own (BR-O-11 to 14).',
  ];
}
