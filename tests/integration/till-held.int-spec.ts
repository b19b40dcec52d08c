import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { Database, Prisma } from '#libs/db';
import { emptyTables, openTestDatabase, refusal } from '../support/database.ts';
import { makeJob } from '../support/factories.ts';

const NOW = new Date('2026-06-09T08:00:00Z');
const PERSON = randomUUID();

let db: Database;
let job: { jobId: string; customerId: string };
beforeAll(async () => {
  db = (await openTestDatabase()).db;
});
beforeEach(async () => {
  await emptyTables(db);
  await db.jobTemplate.create({ data: { key: 'thermostat', version: 1, name: 'Thermostat', definition: {} } });
  job = await makeJob(db, { deskId: PERSON });
});
afterAll(() => db.$disconnect());

interface Row {
  category?: string;
  rate: string | null;
  taxable: number;
  tax: number;
}

let numbers = 0;
interface Bill {
  kind?: string;
  originalId?: string;
  jobId?: string;
  preceding?: readonly string[];
}

/** An issued document with these rows in its VAT table. */
async function bill(rows: readonly Row[], { kind = 'invoice', originalId, jobId = job.jobId, preceding = [] }: Bill = {}): Promise<string> {
  const series = kind;
  await db.invoiceSeries.createMany({ data: [{ key: series, prefix: series }], skipDuplicates: true });
  const serial = (await db.invoice.count({ where: { seriesKey: series } })) + 1;
  const net = rows.reduce((sum, { taxable }) => sum + taxable, 0);
  const tax = rows.reduce((sum, row) => sum + row.tax, 0);
  const document = {
    preceding: preceding.map((number) => ({ number, issueDate: '2026-06-09' })),
    totals: {
      vat: rows.map(({ category = 'S', ...row }) => ({
        category,
        rate: row.rate,
        taxable: row.taxable.toFixed(2),
        tax: row.tax.toFixed(2),
      })),
    },
  };
  const data: Prisma.InvoiceUncheckedCreateInput = {
    seriesKey: series,
    serial,
    number: `${series}-${(numbers += 1)}`,
    kind,
    jobId,
    customerId: job.customerId,
    ...(originalId === undefined ? {} : { originalId }),
    issuedOn: NOW,
    dueOn: NOW,
    currency: 'EUR',
    taxExclusive: net.toFixed(2),
    vatTotal: tax.toFixed(2),
    taxInclusive: (net + tax).toFixed(2),
    payable: (net + tax).toFixed(2),
    document,
    issuedAt: NOW,
    issuedById: PERSON,
  };
  return (await db.invoice.create({ data })).id;
}

const credit = (originalId: string, rows: readonly Row[]): Promise<string> => bill(rows, { kind: 'credit-note', originalId });
const money = (amount: string, on: { invoiceId?: string; jobId?: string }) =>
  db.payment.create({
    data: { ...on, amount, method: 'cash', why: amount.startsWith('-') ? 'given back' : '', paidOn: NOW, takenById: PERSON, takenAt: NOW },
  });

describe('a credit note', () => {
  it('stays within each rate, even where the sum would allow more', async () => {
    const invoice = await bill([
      { rate: '20', taxable: 100, tax: 20 },
      { rate: '5', taxable: 100, tax: 5 },
    ]);
    expect(await refusal(credit(invoice, [{ rate: '20', taxable: 120, tax: 5 }]))).toBe('RW008');
    expect(await refusal(credit(invoice, [{ rate: '5', taxable: 50, tax: 5.01 }]))).toBe('RW008');
    expect(await refusal(credit(invoice, [{ rate: '7', taxable: 1, tax: 0 }]))).toBe('RW008');
    expect(await refusal(credit(invoice, [{ category: 'E', rate: '20', taxable: 1, tax: 0 }]))).toBe('RW008');
    await credit(invoice, [{ rate: '20.00', taxable: 60, tax: 12 }]); // 20.00 is 20
    expect(await refusal(credit(invoice, [{ rate: '20', taxable: 40.01, tax: 8 }]))).toBe('RW008');
    await credit(invoice, [
      { rate: '20', taxable: 40, tax: 8 },
      { rate: '5', taxable: 100, tax: 5 },
    ]);
  });

  it('takes a negative row back to nothing and no further', async () => {
    const invoice = await bill([
      { rate: '20', taxable: 100, tax: 20 },
      { rate: '5', taxable: -40, tax: -2 },
    ]);
    const back: Row = { rate: '5', taxable: -41, tax: -2 };
    expect(await refusal(credit(invoice, [{ rate: '20', taxable: 100, tax: 20 }, back]))).toBe('RW008');
    await credit(invoice, [
      { rate: '20', taxable: 100, tax: 20 },
      { ...back, taxable: -40 },
    ]);
  });

  it('has no rate in category O', async () => {
    const invoice = await bill([{ category: 'O', rate: null, taxable: 100, tax: 0 }]);
    expect(await refusal(credit(invoice, [{ category: 'O', rate: '0', taxable: 10, tax: 0 }]))).toBe('RW008');
    await credit(invoice, [{ category: 'O', rate: null, taxable: 100, tax: 0 }]);
  });

  it('leaves a deposit alone while an invoice that stands has taken it off', async () => {
    const deposit = await bill([{ rate: '20', taxable: 50, tax: 10 }], { kind: 'deposit' });
    const { number } = await db.invoice.findUniqueOrThrow({ where: { id: deposit } });
    const final = await bill([{ rate: '20', taxable: 100, tax: 20 }], { preceding: [number] });
    const back: Row[] = [{ rate: '20', taxable: 50, tax: 10 }];
    expect(await refusal(credit(deposit, back))).toBe('RW008');
    await credit(final, [{ rate: '20', taxable: 100, tax: 20 }]);
    await credit(deposit, back);
  });
});

describe('money on account', () => {
  it('is of an invoice or of a job, and says why it goes back', async () => {
    const invoiceId = await bill([{ rate: '20', taxable: 100, tax: 20 }]);
    expect(await refusal(money('10', {}))).toBe('payment_of_one');
    expect(await refusal(money('10', { invoiceId, jobId: job.jobId }))).toBe('payment_of_one');
    await money('10', { jobId: job.jobId });
    const bare = { jobId: job.jobId, amount: '-1', method: 'cash', paidOn: NOW, takenById: PERSON, takenAt: NOW };
    expect(await refusal(db.payment.create({ data: bare }))).toBe('payment_back_says_why');
  });

  it('goes back at most as far as it came and no invoice took it', async () => {
    const { id } = await money('100', { jobId: job.jobId });
    expect(await refusal(money('-100.01', { jobId: job.jobId }))).toBe('RW009');
    await money('-30', { jobId: job.jobId });
    const invoiceId = await bill([{ rate: '20', taxable: 100, tax: 20 }]);
    for (const { id: paymentId } of await db.payment.findMany()) await db.invoicePrepayment.create({ data: { paymentId, invoiceId } });
    expect(await refusal(money('-0.01', { jobId: job.jobId }))).toBe('RW009');
    expect(await refusal(db.invoicePrepayment.create({ data: { paymentId: id, invoiceId } }))).toBe('invoice_prepayment_pkey');
    expect(await refusal(db.invoicePrepayment.deleteMany())).toBe('RW001');
  });

  it('is taken by an invoice of its own job', async () => {
    const { id: paymentId } = await money('100', { jobId: job.jobId });
    const other = await makeJob(db, { deskId: PERSON, registration: 'BB2', keyTag: 15 });
    const invoiceId = await bill([{ rate: '20', taxable: 100, tax: 20 }], { jobId: other.jobId });
    expect(await refusal(db.invoicePrepayment.create({ data: { paymentId, invoiceId } }))).toBe('RW009');
  });
});

describe('a cash-up', () => {
  it('says why where the count differs, counts each payment once, and stays', async () => {
    const { id: paymentId } = await money('100', { jobId: job.jobId });
    const drawer = { at: NOW, byId: PERSON, floatBefore: '50', banked: '100', floatAfter: '49' };
    const { id: cashUpId } = await db.cashUp.create({ data: drawer });
    const line = { cashUpId, method: 'cash', expected: '150', counted: '149' };
    expect(await refusal(db.cashUpLine.create({ data: line }))).toBe('cash_up_line_says_why');
    await db.cashUpLine.create({ data: { ...line, why: 'change given wrong' } });
    await db.cashUpPayment.create({ data: { paymentId, cashUpId } });
    expect(await refusal(db.cashUpPayment.create({ data: { paymentId, cashUpId } }))).toBe('cash_up_payment_pkey');
    expect(await refusal(db.cashUp.update({ where: { id: cashUpId }, data: { banked: '99' } }))).toBe('RW001');
    expect(await refusal(db.cashUp.create({ data: { ...drawer, floatAfter: '-1' } }))).toBe('cash_up_drawer');
  });
});
