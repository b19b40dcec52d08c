import { Decimal } from '#libs/money';
import type { CsvCell } from '../../../platform/csv-text.ts';
import { isoDay } from '../../../web/dates.ts';
import type { JournalDocument, JournalPayment } from './books.repository.ts';

const HEAD = [
  'date',
  'entry',
  'document',
  'corrects',
  'job',
  'customer number',
  'customer',
  'tax category',
  'tax rate %',
  'net',
  'tax',
  'gross',
  'rounding',
  'prepaid',
  'payable',
  'paid',
  'method',
  'reference',
  'currency',
] as const;

type Column = (typeof HEAD)[number];
type Entry = Partial<Record<Column, CsvCell>> & { date: string };

const figure = (amount: string): CsvCell => ({ figure: amount });
const day = (at: Date): string => isoDay(at, 'utc');
const isZero = (amount: string): boolean => new Decimal(amount).isZero();

/** A row per category and rate; what is once per document (rounding, prepaid, payable) stands in its first. Credit notes are negative. */
function documentRows({ document, ...row }: JournalDocument): Entry[] {
  const { totals, currency } = document;
  const isCredit = row.kind === 'credit-note';
  const signed = (amount: string): CsvCell => figure(isCredit && !isZero(amount) ? new Decimal(amount).negated().toFixed(2) : amount);
  return totals.vat.map(({ category, rate, taxable, tax }, index) => ({
    date: day(row.issuedOn),
    entry: row.kind,
    document: row.number,
    corrects: row.originalNumber ?? '',
    job: row.jobNumber === null ? '' : figure(String(row.jobNumber)),
    'customer number': row.customerNumber === null ? '' : figure(String(row.customerNumber)),
    customer: row.customerName,
    'tax category': category,
    'tax rate %': rate === null ? '' : figure(rate),
    net: signed(taxable),
    tax: signed(tax),
    gross: signed(new Decimal(taxable).plus(tax).toFixed(2)),
    ...(index === 0 ? { rounding: signed(totals.rounding), prepaid: signed(totals.prepaid), payable: signed(totals.payable) } : {}),
    currency,
  }));
}

function paymentRow(payment: JournalPayment): Entry {
  return {
    date: day(payment.paidOn),
    entry: payment.amount.startsWith('-') ? 'paid back' : payment.number === '' ? 'paid on account' : 'payment',
    document: payment.number,
    job: payment.jobNumber === null ? '' : figure(String(payment.jobNumber)),
    customer: payment.customerName,
    paid: figure(payment.amount),
    method: payment.method,
    reference: payment.why === '' ? payment.reference : [payment.reference, payment.why].filter((part) => part !== '').join(': '),
    currency: payment.currency,
  };
}

/**
 * The book-keeper's table: each document by category and rate, each payment, by day. The sums of net and tax over it are the
 * turnover and the tax of the period.
 */
export function journalRows(documents: readonly JournalDocument[], payments: readonly JournalPayment[]): CsvCell[][] {
  const entries = [...documents.flatMap(documentRows), ...payments.map(paymentRow)];
  const byDay = entries
    .map((entry, place) => ({ entry, place }))
    .sort((a, b) => a.entry.date.localeCompare(b.entry.date) || a.place - b.place);
  return [[...HEAD], ...byDay.map(({ entry }) => HEAD.map((column) => entry[column] ?? ''))];
}
