import { allocate, type DecimalString, sumAmounts, toAmount, toDecimal } from '#libs/money';
import { type DraftLine } from '../document/invoice-line.ts';
import { done, type Outcome, refused } from '../outcome.ts';
import { checkFigure } from '../totals/check-figure.ts';
import { type VatRow } from '../totals/totals-input.ts';
import { vatKeyWords } from '../totals/vat-key.ts';
import { splitGross } from './split-gross.ts';

export interface DepositLines {
  readonly lines: readonly DraftLine[];
  /** For the document's `rounding`, so that exactly the money received is payable. */
  readonly rounding: DecimalString;
}

/**
 * Lines of a deposit invoice for a round sum of money, spread over the rates of the estimate in proportion to their amounts
 * with tax.
 *
 * @param gross money received, with VAT
 * @param estimate VAT table of the estimated work
 * @param options `words` for the lines, such as 'Deposit on job 1042'
 * @example depositLines('100.00', [{ category: 'S', rate: '20', taxable: '200.00', tax: '40.00' }], { words: 'Deposit on job 1042' })
 * // { ok: true, value: { lines: [{ name: 'Deposit on job 1042, VAT 20 %', unitPrice: '83.33', … }], rounding: '0.00' } }
 */
export function depositLines(gross: DecimalString, estimate: readonly VatRow[], options: { words: string }): Outcome<DepositLines> {
  const errors = checkFigure('gross', gross, { what: 'The deposit', places: 2, sign: 'above-zero' });
  if (errors.length > 0) return refused(errors);
  const rows = estimate.filter((row) => grossOf(row).gt(0));
  if (rows.length === 0)
    return refused([{ field: 'estimate', message: 'The estimate has no amount to take a deposit on. Enter the work first.' }]);
  const shares = allocate(
    gross,
    rows.map((row) => grossOf(row).toFixed(2)),
  );
  const parts = rows.map((row, index) => ({ row, split: splitGross(shares[index] ?? '0.00', row.rate) }));
  const lines = parts
    .filter(({ split }) => split.net !== '0.00')
    .map(({ row, split }, index) => lineOf(row, split.net, { id: String(index + 1), words: options.words }));
  // Summed over what the document will compute, so a share too small for a line still ends in the rounding.
  const charged = sumAmounts(parts.flatMap(({ split }) => (split.net === '0.00' ? [] : [split.net, split.tax])));
  return done({ lines, rounding: toAmount(toDecimal(gross).minus(charged)) });
}

function grossOf(row: VatRow): ReturnType<typeof toDecimal> {
  return toDecimal(row.taxable).plus(toDecimal(row.tax));
}

function lineOf(row: VatRow, net: DecimalString, { id, words }: { id: string; words: string }): DraftLine {
  return {
    id,
    kind: 'deposit',
    name: `${words}, ${vatKeyWords(row)}`,
    quantity: '1',
    unit: 'C62',
    unitPrice: net,
    vatCategory: row.category,
    vatRate: row.rate,
  };
}
