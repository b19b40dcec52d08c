import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { parse } from 'csv-parse/sync';
import { textOfPdf } from '../support/pdf-text.ts';
import { type Agent, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';
import { finishedJob, issueInvoice, press } from '../support/till.ts';

let test: TestApp;
let desk: Agent;
let staff: Record<StaffName, string>;
let invoiceId: string;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set(new Date('2026-06-09T08:00:00Z'));
  staff = await test.furnish();
  desk = await test.as('desk');
  invoiceId = await issueInvoice(desk, await finishedJob(test, staff));
});
afterAll(() => test.close());

const pay = (amount: string, method: string): Promise<string> =>
  press(desk, `/till/invoices/${invoiceId}`, {
    form: 'payment',
    to: `/till/invoices/${invoiceId}/payments`,
    values: { amount, method, reference: '=slip 7', paidOn: '2026-06-09' },
  });
const count = (values: Record<string, string>): Promise<string> =>
  press(desk, '/till/cash-up', {
    form: 'cash-up',
    to: '/till/cash-up',
    values: { cash: '0', card: '0', transfer: '0', other: '0', banked: '0', why: '', ...values },
  });

describe('the overdue list', () => {
  it('has an invoice from the day after its day until it is paid', async () => {
    expect((await desk.get('/till/overdue')).text).toContain('Nothing is overdue');
    test.clock.set(new Date('2026-06-24T08:00:00Z')); // due on the 23rd
    desk = await test.as('desk');
    const { text } = await desk.get('/till/overdue');
    expect(text).toContain('2026-0001');
    expect(text).toContain('Odile Quill');
    const { payable } = await test.db.invoice.findUniqueOrThrow({ where: { id: invoiceId } });
    await pay(payable.toFixed(2), 'transfer');
    expect((await desk.get('/till/overdue')).text).toContain('Nothing is overdue');
  });
});

describe('the cash-up', () => {
  it('counts each payment once and carries the drawer over', async () => {
    await pay('100', 'cash');
    await pay('50', 'card');
    const { text } = await desk.get('/till/cash-up');
    expect(text).toContain('2 payments since the last time');
    const upTo = /name="upTo" value="([^"]+)"/.exec(text)?.[1] ?? '';
    await pay('7', 'cash'); // comes in while the drawer is counted
    expect(await count({ cash: '99', card: '50', banked: '60', upTo })).toBe('/till/cash-up');
    expect((await desk.get('/till/cash-up')).text).toContain('say why, or that nobody knows');
    await count({ cash: '99', card: '50', banked: '60', why: 'a coin rolled away', upTo });
    const [closed] = await test.db.cashUp.findMany({ include: { lines: { orderBy: { method: 'asc' } }, payments: true } });
    expect(closed?.lines.map(({ method, expected, counted, why }) => [method, expected.toFixed(2), counted.toFixed(2), why])).toEqual([
      ['card', '50.00', '50.00', ''],
      ['cash', '100.00', '99.00', 'a coin rolled away'],
      ['other', '0.00', '0.00', ''],
      ['transfer', '0.00', '0.00', ''],
    ]);
    expect(closed?.payments).toHaveLength(2);
    const after = (await desk.get('/till/cash-up')).text;
    expect(after).toContain('1 payment since the last time');
    expect(after).toContain('39.00 was left in the drawer');
    expect(after).toContain('a coin rolled away');
  });

  it('is refused over payments that another count has closed, and for more to the bank than is there', async () => {
    await pay('100', 'cash');
    const upTo = /name="upTo" value="([^"]+)"/.exec((await desk.get('/till/cash-up')).text)?.[1] ?? '';
    expect(await count({ cash: '100', banked: '100.01', upTo })).toBe('/till/cash-up');
    await count({ cash: '100', upTo });
    await count({ cash: '100', upTo });
    expect((await desk.get('/till/cash-up')).text).toContain('Somebody closed a count in between');
    expect(await test.db.cashUp.count()).toBe(1);
  });
});

describe('the journal', () => {
  it('is a table that adds up and runs no formula', async () => {
    await pay('100', 'cash');
    const { text, headers } = await desk.get('/till/journal.csv?from=2026-06-01&to=2026-06-30').expect(200);
    expect(headers['content-type']).toContain('text/csv');
    const rows = parse<Record<string, string>>(text, { columns: true });
    const invoice = await test.db.invoice.findUniqueOrThrow({ where: { id: invoiceId } });
    const sum = (column: string): string => rows.reduce((total, row) => total + Number(row[column]), 0).toFixed(2);
    expect([sum('net'), sum('tax'), sum('paid')]).toEqual([invoice.taxExclusive.toFixed(2), invoice.vatTotal.toFixed(2), '100.00']);
    expect(rows.find(({ entry }) => entry === 'payment')?.['reference']).toBe("'=slip 7");
    expect(parse((await desk.get('/till/journal.csv?from=2026-07-01&to=2026-07-31')).text)).toHaveLength(1);
  });

  it.each(['from=2026-02-30&to=2026-03-01', 'from=x&to=2026-03-01', 'to=2026-03-01'])('says that %s is no period', async (query) => {
    await desk.get(`/till/journal.csv?${query}`).expect(400);
  });
});

describe('a receipt', () => {
  it('says what was paid, by whom, for what', async () => {
    await pay('100', 'cash');
    const payment = await test.db.payment.findFirstOrThrow();
    const pdf = await desk.get(`/till/payments/${payment.id}/receipt.pdf`).responseType('blob').expect(200);
    const text = await textOfPdf(pdf.body as Buffer);
    for (const words of ['Receipt', '100.00', 'Odile Quill', 'Invoice 2026-0001', '9 Jun 2026', 'cash', 'Ines'])
      expect(text).toContain(words);
  });
});
