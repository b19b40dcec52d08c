import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { makeJob } from '../support/factories.ts';
import { textOfPdf } from '../support/pdf-text.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';
import { finishedJob, issueInvoice } from '../support/till.ts';

let test: TestApp;
let desk: Agent;
let staff: Record<StaffName, string>;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  staff = await test.furnish();
  await test.db.coolantProduct.create({ data: { name: 'Concentrate', glycol: 'ethylene', technology: 'organic', pricePerL: '9.80' } });
  desk = await test.as('desk');
});
afterAll(() => test.close());

const LABOUR = 'labour:Thermostat renewed, coolant part drained and made up again';

const done = (registration?: string): Promise<string> => finishedJob(test, staff, registration === undefined ? {} : { registration });
const issue = (jobId: string): Promise<string> => issueInvoice(desk, jobId);

describe('the draft', () => {
  it('is computed from the card: hours, product, waste', async () => {
    const jobId = await done();
    const { text } = await desk.get(`/till/jobs/${jobId}`).expect(200);
    // 2.5 L of product at 9.80; 4.8 L of waste at 0.90; the planned hands-on hours at 60.00
    expect(text).toContain('2.5 L');
    expect(text).toContain('24.50');
    expect(text).toContain('4.32');
  });

  it('keeps the desk’s change with its reason', async () => {
    const jobId = await done();
    const draft = await desk.get(`/till/jobs/${jobId}?edit=${encodeURIComponent(LABOUR)}`).expect(200);
    const body = {
      origin: LABOUR,
      description: 'Labour, as agreed',
      quantity: '2',
      unitPrice: '60',
      why: 'agreed by phone',
    };
    await desk
      .post(`/till/jobs/${jobId}/lines`)
      .type('form')
      .send({ ...formMarks(draft.text, 'line'), ...body })
      .expect(303);
    const { text } = await desk.get(`/till/jobs/${jobId}`).expect(200);
    expect(text).toContain('Labour, as agreed');
    expect(text).toContain('agreed by phone');
    expect(text).toContain('120.00');
  });

  it('bills nothing that nobody said yes to', async () => {
    const { jobId } = await makeJob(test.db, { deskId: staff.desk });
    const { text } = await desk.get(`/till/jobs/${jobId}`).expect(200);
    expect(text).toContain('No line can be billed');
    expect(text).not.toContain('Issue it');
  });
});

describe('issuing', () => {
  it('gives numbers without gaps to issues at the same moment', async () => {
    const jobs = [];
    for (const registration of ['AA1', 'BB2', 'CC3', 'DD4']) jobs.push(await done(registration));
    await Promise.all(jobs.map(issue));
    const invoices = await test.db.invoice.findMany({ orderBy: { serial: 'asc' } });
    expect(invoices.map(({ number }) => number)).toEqual(['2026-0001', '2026-0002', '2026-0003', '2026-0004']);
  });

  it('issues once, whatever is pressed twice', async () => {
    const jobId = await done();
    const { text } = await desk.get(`/till/jobs/${jobId}`).expect(200);
    const marks = formMarks(text, 'issue');
    const press = () => desk.post(`/till/jobs/${jobId}/issue`).type('form').send(marks);
    const [first, second] = await Promise.all([press(), press()]);
    expect(second.headers['location']).toBe(first.headers['location']);
    const again = await desk
      .post(`/till/jobs/${jobId}/issue`)
      .type('form')
      .send({ ...marks, _key: crypto.randomUUID() });
    expect(again.headers['location']).toBe(`/till/jobs/${jobId}`);
    expect(await test.db.invoice.count()).toBe(1);
  });

  it('is refused by the database to change or to skip', async () => {
    const id = await issue(await done());
    await expect(test.db.invoice.update({ where: { id }, data: { payable: '1.00' } })).rejects.toThrow();
    await expect(test.db.invoice.delete({ where: { id } })).rejects.toThrow();
    const row = await test.db.invoice.findUniqueOrThrow({ where: { id } });
    const { id: _, ...copy } = row;
    await expect(test.db.invoice.create({ data: { ...copy, serial: 7, number: '2026-0007', document: {} } })).rejects.toThrow();
  });

  it('prints the frozen figures, the same bytes each time', async () => {
    const id = await issue(await done());
    const { totals } = (await test.db.invoice.findUniqueOrThrow({ where: { id } })).document as unknown as {
      totals: { payable: string; taxExclusive: string };
    };
    const first = await desk.get(`/api/v1/invoices/${id}/document.pdf`).responseType('blob').expect(200);
    const text = await textOfPdf(first.body as Buffer);
    expect(text).toContain('2026-0001');
    expect(text).toContain('Odile Quill');
    expect(text).toContain('TQ40KES');
    expect(text).toContain(totals.payable);
    expect(text).toContain(totals.taxExclusive);
    const second = await desk.get(`/till/invoices/${id}/document.pdf`).responseType('blob').expect(200);
    expect(Buffer.compare(first.body as Buffer, second.body as Buffer)).toBe(0);
    const ubl = await desk.get(`/api/v1/invoices/${id}/ubl.xml`).expect(200);
    expect(ubl.text).toContain(`<cbc:PayableAmount currencyID="EUR">${totals.payable}</cbc:PayableAmount>`);
  });
});

describe('payments', () => {
  it('close the invoice and the customer’s debt, and never go beyond', async () => {
    const jobId = await done();
    const id = await issue(jobId);
    expect(await test.db.jobDebt.count({ where: { jobId, kind: 'customer-money', endedAt: null } })).toBe(1);
    const pay = async (amount: string) => {
      const { text } = await desk.get(`/till/invoices/${id}`).expect(200);
      return desk
        .post(`/till/invoices/${id}/payments`)
        .type('form')
        .send({ ...formMarks(text, 'payment'), amount, method: 'card', reference: '', paidOn: '2026-06-09' });
    };
    const { payable } = await test.db.invoice.findUniqueOrThrow({ where: { id } });
    await pay('100');
    await pay(payable.toFixed(2));
    expect((await desk.get(`/till/invoices/${id}`)).text).not.toContain('Paid in full');
    expect(await test.db.payment.count()).toBe(1);
    await pay(payable.minus(100).toFixed(2));
    expect((await desk.get(`/till/invoices/${id}`)).text).toContain('Paid in full');
    expect(await test.db.jobDebt.count({ where: { jobId, kind: 'customer-money', endedAt: null } })).toBe(0);
  });
});

describe('the call for totals', () => {
  it('sums to the cent', async () => {
    const body = { lines: [{ quantity: '3', unitPrice: '0.335', vatCategory: 'S', vatRate: '21' }] };
    const totals = await desk.post('/api/v1/invoices/totals').set('x-requested-with', 'fetch').send(body).expect(200);
    expect(totals.body).toMatchObject({ lines: [{ net: '1.01' }], taxExclusive: '1.01', vatTotal: '0.21', payable: '1.22' });
  });

  it('says what is wrong', async () => {
    const refusal = await desk
      .post('/api/v1/invoices/totals')
      .set('x-requested-with', 'fetch')
      .send({ lines: [{ quantity: 'x' }] })
      .expect(400);
    expect(refusal.body).toMatchObject({
      errors: expect.arrayContaining([expect.objectContaining({ message: expect.any(String) as unknown })]) as unknown,
    });
  });
});
