import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { InvoiceDocument } from '#libs/invoicing';
import { type Agent, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';
import { finishedJob, issueInvoice, press } from '../support/till.ts';

let test: TestApp;
let desk: Agent;
let staff: Record<StaffName, string>;
let jobId: string;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  staff = await test.furnish();
  await test.db.coolantProduct.create({ data: { name: 'Concentrate', glycol: 'ethylene', technology: 'organic', pricePerL: '9.80' } });
  desk = await test.as('desk');
  jobId = await finishedJob(test, staff);
});
afterAll(() => test.close());

const money = (amount: string): Record<string, string> => ({ amount, method: 'cash', reference: '', paidOn: '2026-06-08' });
const deposit = (amount: string): Promise<string> =>
  press(desk, `/till/jobs/${jobId}?edit=deposit`, { form: 'deposit', to: `/till/jobs/${jobId}/deposits`, values: money(amount) });
const giveBack = (amount: string): Promise<string> =>
  press(desk, `/till/jobs/${jobId}?edit=deposit-back`, {
    form: 'deposit-back',
    to: `/till/jobs/${jobId}/deposits/back`,
    values: { ...money(amount), why: 'paid twice' },
  });
const workTotal = async (): Promise<string> => {
  const { text } = await desk.get(`/till/jobs/${jobId}`);
  return /<dd class="due">([\d.,]+)</.exec(text)?.[1] ?? '';
};
const documentOf = async (id: string): Promise<InvoiceDocument> =>
  (await test.db.invoice.findUniqueOrThrow({ where: { id } })).document as unknown as InvoiceDocument;

describe('a deposit with its own tax document', () => {
  it('is a paid invoice of its own, and a negative line per rate on the final one', async () => {
    const work = await workTotal();
    const depositId = (await deposit('100')).replace('/till/invoices/', '');
    const own = await documentOf(depositId);
    expect(own).toMatchObject({ kind: 'deposit-invoice', number: 'D-2026-0001', supplyDate: '2026-06-08', totals: { payable: '100.00' } });
    expect((await desk.get(`/till/invoices/${depositId}`)).text).toContain('Paid in full');
    expect((await desk.get(`/api/v1/invoices/${depositId}/ubl.xml`).expect(200)).text).toContain('>386<');
    const final = await documentOf(await issueInvoice(desk, jobId));
    expect(final.preceding).toEqual([{ number: 'D-2026-0001', issueDate: '2026-06-09' }]);
    expect(final.lines.at(-1)).toMatchObject({ kind: 'deposit', quantity: '-1', name: expect.stringContaining('D-2026-0001') as unknown });
    expect(final.totals.prepaid).toBe('0.00');
    expect(final.totals.payable).toBe((Number(work) - 100).toFixed(2));
  });

  it('closes to the cent where a round sum can’t be split (21 %)', async () => {
    await test.db.workshop.update({ where: { id: 1 }, data: { vatRatePct: '21' } });
    const work = await workTotal();
    await deposit('100');
    const final = await documentOf(await issueInvoice(desk, jobId));
    expect(final.totals.rounding).toBe('-0.01');
    expect(final.totals.payable).toBe((Number(work) - 100).toFixed(2));
  });

  it('is credited only where no standing invoice has taken it off', async () => {
    const depositId = (await deposit('100')).replace('/till/invoices/', '');
    const finalId = await issueInvoice(desk, jobId);
    const credit = (id: string): Promise<string> =>
      press(desk, `/till/invoices/${id}/credit`, {
        form: 'credit',
        to: `/till/invoices/${id}/credit`,
        values: { what: 'rest', reason: 'The job fell through' },
      });
    expect(await credit(depositId)).toBe(`/till/invoices/${depositId}/credit`);
    expect((await desk.get(`/till/invoices/${depositId}/credit`)).text).toContain('has taken this deposit off');
    await credit(finalId);
    expect(await credit(depositId)).toMatch(/^\/till\/invoices\//);
    const again = await documentOf(await issueInvoice(desk, jobId));
    expect(again.preceding).toEqual([]);
  });

  it('beyond the work stops the final invoice, with what to do', async () => {
    await deposit('450');
    const { text } = await desk.get(`/till/jobs/${jobId}`);
    expect(text).not.toContain('Issue it: it never changes');
    expect(text).toContain('Credit the deposit for the difference');
  });
});

describe('money that is only noted', () => {
  beforeEach(() => test.db.workshop.update({ where: { id: 1 }, data: { depositForm: 'prepaid' } }));

  it('is prepaid on the final invoice, once', async () => {
    const work = await workTotal();
    await deposit('100');
    await deposit('50');
    await giveBack('30');
    const finalId = await issueInvoice(desk, jobId);
    const { totals, prepayments } = await documentOf(finalId);
    expect(prepayments.map(({ amount }) => amount)).toEqual(['100.00', '20.00']);
    expect([totals.taxInclusive, totals.prepaid, totals.payable]).toEqual([work, '120.00', (Number(work) - 120).toFixed(2)]);
    expect(await test.db.invoicePrepayment.count({ where: { invoiceId: finalId } })).toBe(3);
    const ubl = (await desk.get(`/api/v1/invoices/${finalId}/ubl.xml`)).text;
    expect(ubl).toContain('<cbc:PrepaidAmount currencyID="EUR">120.00</cbc:PrepaidAmount>');
  });

  it('goes back at most as far as it came', async () => {
    await deposit('100');
    expect(await giveBack('100.01')).toContain('edit=deposit-back');
    expect((await desk.get(`/till/jobs/${jobId}?edit=deposit-back`)).text).toContain('At most 100.00 EUR can go back');
    await giveBack('100');
    expect((await documentOf(await issueInvoice(desk, jobId))).prepayments).toEqual([]);
  });
});

describe('a simplified invoice', () => {
  it('is offered under the owner’s limit and needs no address of the customer', async () => {
    expect((await desk.get(`/till/jobs/${jobId}`)).text).not.toContain('simplified invoice');
    await test.db.workshop.update({ where: { id: 1 }, data: { simplifiedLimit: '400.00' } });
    await test.db.customer.updateMany({ data: { addressLines: [], postcode: '', city: '' } });
    const { text } = await desk.get(`/till/jobs/${jobId}`);
    expect(text).toContain('400.00)');
    expect(text).not.toContain('Issue it: it never changes');
    const place = await press(desk, `/till/jobs/${jobId}`, {
      form: 'issue-simplified',
      to: `/till/jobs/${jobId}/issue`,
      values: { form: 'simplified' },
    });
    const row = await test.db.invoice.findUniqueOrThrow({ where: { id: place.replace('/till/invoices/', '') } });
    expect([row.kind, row.number]).toEqual(['simplified', '2026-0001']);
  });

  it('is refused above the limit', async () => {
    await test.db.workshop.update({ where: { id: 1 }, data: { simplifiedLimit: '10.00' } });
    const place = await press(desk, `/till/jobs/${jobId}`, {
      form: 'issue',
      to: `/till/jobs/${jobId}/issue`,
      values: { form: 'simplified' },
    });
    expect(place).toBe(`/till/jobs/${jobId}`);
    expect(await test.db.invoice.count()).toBe(0);
  });
});
