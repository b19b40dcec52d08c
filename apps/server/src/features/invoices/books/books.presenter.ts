import { sumAmounts } from '#libs/money';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { dateTimeText, isoDay, plainDate } from '../../../web/dates.ts';
import { type FieldView, formFields } from '../../../web/form-field.ts';
import { amountText, moneyText } from '../../../web/money-text.ts';
import { urls } from '../../../web/urls.ts';
import { METHOD_WORDS, METHODS } from '../money/method-words.ts';
import type { CashUpRow, OverdueRow, TakenMoney } from './books.repository.ts';
import { differenceOf, expectedByMethod } from './cash-up-lines.ts';

interface Head {
  title: string;
  lead: string;
  rest: string;
  actions: { href: string; label: string; main?: boolean }[];
}

export interface OverdueView {
  title: string;
  head: Head;
  rows: { href: string; number: string; who: string; whoHref: string; phone: string; due: string; days: number; open: string }[];
  currency: string;
}

const DAY_MS = 86_400_000;
const daysBetween = (from: string, to: string): number => Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

export function presentOverdue(rows: readonly OverdueRow[], { today, currency }: { today: string; currency: string }): OverdueView {
  const total = sumAmounts(rows.map(({ open }) => open)).toFixed(2);
  return {
    title: 'Overdue',
    head: {
      title: 'Overdue',
      lead: rows.length === 0 ? 'Nothing is past its day.' : `${moneyText(total, currency)} is past its day.`,
      rest: rows.length === 0 ? '' : 'The oldest first.',
      actions: [{ href: urls.till, label: 'To the till' }],
    },
    rows: rows.map((row) => ({
      href: urls.invoice(row.id),
      number: row.number,
      who: row.customerName,
      whoHref: urls.customer(row.customerId),
      phone: row.phone,
      due: plainDate(row.dueOn),
      days: daysBetween(isoDay(row.dueOn, 'utc'), today),
      open: amountText(row.open),
    })),
    currency,
  };
}

export interface CashUpView {
  title: string;
  head: Head;
  taken: { of: string; on: string; how: string; amount: string; receipt: string }[];
  expected: { method: string; amount: string }[];
  float: string;
  action: string;
  upTo: string;
  fields: FieldView[];
  past: { number: number; at: string; by: string; lines: { words: string; difference: string }[]; banked: string; left: string }[];
  currency: string;
  errors: FormState['summary'];
}

const COUNT_LABELS = {
  cash: 'Cash in the drawer, counted',
  card: 'Card slips',
  transfer: 'Bank transfers, as the bank says',
  other: 'Otherwise',
} as const;

export function presentCashUp(
  { taken, float, past }: { taken: readonly TakenMoney[]; float: string; past: readonly CashUpRow[] },
  { form, timeZone, currency }: { form: FormState; timeZone: string; currency: string },
): CashUpView {
  const expected = expectedByMethod(taken, float);
  const money = { unit: currency, inputmode: 'decimal', short: true, required: true } as const;
  return {
    title: 'Cash-up',
    head: {
      title: 'Cash-up',
      lead:
        taken.length === 0
          ? 'Nothing was taken since the last time.'
          : `${taken.length} ${taken.length === 1 ? 'payment' : 'payments'} since the last time.`,
      rest: `${moneyText(float, currency)} was left in the drawer.`,
      actions: [{ href: urls.till, label: 'To the till' }],
    },
    taken: taken.map(({ id, of, paidOn, method, amount }) => ({
      of,
      on: plainDate(paidOn),
      how: METHOD_WORDS[method] ?? method,
      amount: amountText(amount),
      receipt: urls.receipt(id),
    })),
    expected: METHODS.map((method) => ({
      method: method === 'cash' ? 'cash, with what was left' : (METHOD_WORDS[method] ?? method),
      amount: amountText(expected[method]),
    })),
    float,
    action: urls.cashUp,
    upTo: taken.at(-1)?.id ?? '',
    fields: Object.values(
      formFields(form, [
        ...METHODS.map((method) => ({
          name: method,
          label: COUNT_LABELS[method],
          value: method === 'cash' ? '' : expected[method],
          ...money,
        })),
        { name: 'banked', label: 'Of the cash, to the bank', value: '0.00', ...money },
        { name: 'why', label: 'Where it differs: why', optional: true, maxlength: 200 },
      ]),
    ),
    past: past.map((row) => ({
      number: row.number,
      at: dateTimeText(row.at, timeZone),
      by: row.by,
      lines: row.lines
        .filter((line) => Number(differenceOf(line)) !== 0)
        .map((line) => ({ words: `${METHOD_WORDS[line.method] ?? line.method}: ${line.why}`, difference: amountText(differenceOf(line)) })),
      banked: amountText(row.banked),
      left: amountText(row.floatAfter),
    })),
    currency,
    errors: form.summary,
  };
}

export interface JournalView {
  title: string;
  head: Head;
  action: string;
  fields: FieldView[];
}

/** The month before this one is what a book-keeper asks for. */
export function presentJournal(form: FormState, today: string): JournalView {
  const first = new Date(`${today.slice(0, 7)}-01T00:00:00Z`);
  const last = new Date(first.getTime() - DAY_MS);
  const lastDay = isoDay(last, 'utc');
  return {
    title: 'Journal',
    head: {
      title: 'Journal',
      lead: 'Documents by rate, and payments, as a table for the book-keeper.',
      rest: 'Credit notes are negative; text can’t become a formula.',
      actions: [{ href: urls.till, label: 'To the till' }],
    },
    action: urls.journalFile,
    fields: Object.values(
      formFields(form, [
        { name: 'from', label: 'From', type: 'date', value: `${lastDay.slice(0, 8)}01`, required: true },
        { name: 'to', label: 'To', type: 'date', value: lastDay, required: true },
      ]),
    ),
  };
}
