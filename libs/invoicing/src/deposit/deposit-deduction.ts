import { toAmount, toDecimal } from '#libs/money';
import { type DocumentReference, type Prepayment } from '../document/invoice-document.ts';
import { type DraftLine } from '../document/invoice-line.ts';
import { done, type FieldError, type Outcome, refused } from '../outcome.ts';
import { type VatRow } from '../totals/totals-input.ts';
import { vatKeyText, vatKeyWords } from '../totals/vat-key.ts';
import { type DepositForm, type IssuedDeposit, type ReceivedMoney } from './deposit.ts';

export interface DepositDeductionRequest {
  readonly form: DepositForm;
  readonly deposits: readonly IssuedDeposit[];
  readonly received: readonly ReceivedMoney[];
  /** VAT table of the work before deduction, to warn where a deposit is more than the work at its rate. */
  readonly work: readonly VatRow[];
}

export interface DepositDeduction {
  /** Negative lines, one per deposit, category and rate; add them after the lines of the work. */
  readonly lines: readonly DraftLine[];
  /** Deposits named on the final invoice (BG-3). */
  readonly preceding: readonly DocumentReference[];
  /** Money without a tax document; only this is `prepaid`. */
  readonly prepayments: readonly Prepayment[];
  readonly warnings: readonly string[];
}

/**
 * Takes deposits off a final invoice. A deposit with its own tax document becomes a negative line per category and rate that
 * names it, so that its VAT is not charged twice; `prepaid` is only for money without such a document.
 *
 * Source: Directive 2006/112/EC art. 65 (from memory); EN 16931 BG-3 (preceding pre-payment invoices, from memory).
 *
 * @example depositDeduction({ form: 'tax-document', deposits: [{ number: 'D-7', issueDate: '2026-06-03', vat: [row] }], received: [], work: [] })
 * // { ok: true, value: { lines: [{ name: 'Deposit D-7 of 2026-06-03, VAT 20 %', quantity: '-1', unitPrice: '83.33', … }], … } }
 */
export function depositDeduction(request: DepositDeductionRequest): Outcome<DepositDeduction> {
  const errors = checkDeposits(request);
  if (errors.length > 0) return refused(errors);
  return done({
    lines: request.deposits.flatMap(linesOf),
    preceding: request.deposits.map(({ number, issueDate }) => ({ number, issueDate })),
    prepayments: request.received.filter((money) => money.depositNumber === undefined).map(withoutNumber),
    warnings: warningsOf(request),
  });
}

function checkDeposits({ form, deposits, received }: DepositDeductionRequest): FieldError[] {
  const numbers = new Set(deposits.map((deposit) => deposit.number));
  const errors: FieldError[] = [];
  if (form === 'prepaid' && deposits.length > 0)
    errors.push({
      field: 'deposits',
      message: 'Deposits with a tax document are switched off in the settings, but one was issued. Switch them on or credit it first.',
    });
  if (numbers.size < deposits.length) errors.push({ field: 'deposits', message: 'A deposit is named twice. Deduct each one once.' });
  for (const [index, money] of received.entries()) {
    if (money.depositNumber !== undefined && !numbers.has(money.depositNumber))
      errors.push({
        field: `received[${index}].depositNumber`,
        message: `The money of ${money.date} belongs to deposit ${money.depositNumber}, which is not deducted. Add that deposit.`,
      });
  }
  return errors;
}

function linesOf(deposit: IssuedDeposit): DraftLine[] {
  return deposit.vat
    .filter((row) => !toDecimal(row.taxable).isZero())
    .map((row) => {
      const taxable = toDecimal(row.taxable);
      return {
        id: `${deposit.number} ${vatKeyText(row)}`.trim(),
        kind: 'deposit',
        name: `Deposit ${deposit.number} of ${deposit.issueDate}, ${vatKeyWords(row)}`,
        quantity: taxable.isNegative() ? '1' : '-1',
        unit: 'C62',
        unitPrice: toAmount(taxable.abs()),
        vatCategory: row.category,
        vatRate: row.rate,
      };
    });
}

function withoutNumber({ amount, date, method, reference }: ReceivedMoney): Prepayment {
  return { amount, date, method, ...(reference === undefined ? {} : { reference }) };
}

function warningsOf({ deposits, work }: DepositDeductionRequest): string[] {
  const deducted = new Map<string, { row: VatRow; sum: VatRow['taxable'] }>();
  for (const row of deposits.flatMap((deposit) => deposit.vat)) {
    const before = deducted.get(vatKeyText(row))?.sum ?? '0';
    deducted.set(vatKeyText(row), { row, sum: toAmount(toDecimal(before).plus(toDecimal(row.taxable))) });
  }
  return [...deducted.values()].flatMap(({ row, sum }) => {
    const ofWork = work.find((candidate) => vatKeyText(candidate) === vatKeyText(row))?.taxable ?? '0.00';
    const over = toDecimal(sum).minus(toDecimal(ofWork));
    if (over.lte(0)) return [];
    return [
      `${vatKeyWords(row)}: deposits of ${sum} before tax are ${toAmount(over)} more than the work of ${ofWork} at this rate. Credit the deposit for the difference instead of leaving the row negative.`,
    ];
  });
}
