import { Decimal, percentOf, toAmount, toDecimal } from '#libs/money';
import { type TotalsInput, type VatRow } from './totals-input.ts';
import { type VatKey, vatKey, vatKeyText } from './vat-key.ts';

/**
 * The VAT table: one row per category and rate, in the order in which they first appear. Taxable = lines − allowances +
 * charges of that row (BR-S-08 and its sisters); tax = round2(taxable × rate ÷ 100) once per row, never per line (BR-CO-17,
 * BR-S-09).
 *
 * @param input checked figures
 * @param nets net amount of each line, in order
 */
export function vatRows(input: TotalsInput, nets: readonly Decimal[]): VatRow[] {
  const rows = new Map<string, { key: VatKey; taxable: Decimal }>();
  const add = (entry: Pick<TotalsInput['lines'][number], 'vatCategory' | 'vatRate'>, amount: Decimal): void => {
    const key = vatKey(entry.vatCategory, entry.vatRate);
    const text = vatKeyText(key);
    const row = rows.get(text);
    rows.set(text, { key, taxable: row === undefined ? amount : row.taxable.plus(amount) });
  };
  for (const [index, line] of input.lines.entries()) add(line, nets[index] ?? new Decimal(0));
  for (const allowance of input.allowances ?? []) add(allowance, toDecimal(allowance.amount).negated());
  for (const charge of input.charges ?? []) add(charge, toDecimal(charge.amount));
  return [...rows.values()].map(({ key, taxable }) => ({
    ...key,
    taxable: toAmount(taxable),
    tax: toAmount(key.rate === null ? '0' : percentOf(taxable, key.rate)),
  }));
}
