import {
  creditLeft,
  depositDeduction,
  type DepositDeduction,
  type IssuedDeposit,
  type Outcome,
  type PaymentMethod,
  type Prepayment,
  type VatRow,
} from '#libs/invoicing';
import { Decimal, sumAmounts, toAmount } from '#libs/money';
import type { Workshop } from '../../../platform/workshop-facts.ts';
import { isoDay } from '../../../web/dates.ts';
import type { BillFacts, DepositFacts, MoneyOnAccount } from '../job-bill.repository.ts';

export interface Deduction extends DepositDeduction {
  /** What the deposits' own roundings leave over, so that exactly the money received is taken off. */
  rounding: string | undefined;
}

export const METHODS: Readonly<Record<string, PaymentMethod>> = {
  cash: 'cash',
  card: 'card',
  transfer: 'credit-transfer',
  other: 'other',
};

const dayOf = (day: Date): string => isoDay(day, 'utc');

/** Money that went back is taken off what came last before it, so that only what we hold is prepaid. */
function heldMoney(entries: readonly MoneyOnAccount[]): Prepayment[] {
  const held: { amount: Decimal; entry: MoneyOnAccount }[] = [];
  for (const entry of entries) {
    let amount = new Decimal(entry.amount);
    while (amount.isNegative()) {
      const last = held.at(-1);
      if (!last) break;
      const taken = Decimal.min(last.amount, amount.abs());
      last.amount = last.amount.minus(taken);
      amount = amount.plus(taken);
      if (last.amount.isZero()) held.pop();
    }
    if (amount.gt(0)) held.push({ amount, entry });
  }
  return held.map(({ amount, entry }) => ({
    amount: toAmount(amount),
    date: dayOf(entry.paidOn),
    method: METHODS[entry.method] ?? 'other',
    ...(entry.reference === '' ? {} : { reference: entry.reference }),
  }));
}

function leftOf({ number, document, creditNotes }: DepositFacts): { deposit: IssuedDeposit; rounding: string } | undefined {
  const { rows, rounding } = creditLeft(document, creditNotes);
  const vat = rows.filter(({ taxable }) => !new Decimal(taxable).isZero());
  if (vat.length === 0) return undefined;
  return { deposit: { number, issueDate: document.issueDate ?? '', vat }, rounding };
}

/** What was paid before the work, as the final invoice takes it off: deposits by their tax documents, other money as prepaid. */
export function deductionOf(
  { deposits, onAccount }: Pick<BillFacts, 'deposits' | 'onAccount'>,
  { depositForm, work }: Pick<Workshop, 'depositForm'> & { work: readonly VatRow[] },
): Outcome<Deduction> {
  const left = deposits.flatMap((deposit) => leftOf(deposit) ?? []);
  const answer = depositDeduction({
    // A deposit that has its document keeps it, whatever the setting says now.
    form: left.length > 0 ? 'tax-document' : depositForm,
    deposits: left.map(({ deposit }) => deposit),
    received: heldMoney(onAccount),
    work,
  });
  if (!answer.ok) return answer;
  const over = sumAmounts(left.map(({ rounding }) => rounding));
  return { ok: true, value: { ...answer.value, rounding: over.isZero() ? undefined : toAmount(over.negated()) } };
}
