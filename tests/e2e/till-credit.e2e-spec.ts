import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { InvoiceDocument } from '#libs/invoicing';
import { textOfPdf } from '../support/pdf-text.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';
import { finishedJob, issueInvoice, press } from '../support/till.ts';

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

const credit = (id: string, values: Record<string, string | string[]>): Promise<string> =>
  press(desk, `/till/invoices/${id}/credit`, { form: 'credit', to: `/till/invoices/${id}/credit`, values });
const pay = (id: string, amount: string, form: 'payment' | 'back' = 'payment'): Promise<string> =>
  press(desk, `/till/invoices/${id}`, {
    form,
    to: `/till/invoices/${id}/payments${form === 'back' ? '/back' : ''}`,
    values: { amount, method: 'cash', reference: '', paidOn: '2026-06-09', ...(form === 'back' ? { why: 'credited' } : {}) },
  });
const rowOf = (id: string) => test.db.invoice.findUniqueOrThrow({ where: { id } });
const documentOf = async (id: string): Promise<InvoiceDocument> => (await rowOf(id)).document as unknown as InvoiceDocument;
const idOf = (place: string): string => place.replace('/till/invoices/', '');

describe('a credit note', () => {
  it('takes an invoice back whole, in its own series, and lets the job be invoiced anew', async () => {
    const jobId = await finishedJob(test, staff);
    const id = await issueInvoice(desk, jobId);
    const noteId = idOf(await credit(id, { what: 'rest', reason: 'Wrong customer' }));
    const [invoice, note] = [await rowOf(id), await rowOf(noteId)];
    expect([note.number, note.kind, note.originalId]).toEqual(['C-2026-0001', 'credit-note', id]);
    expect(note.taxInclusive.toFixed(2)).toBe(invoice.taxInclusive.toFixed(2));
    expect((await documentOf(noteId)).preceding).toEqual([{ number: '2026-0001', issueDate: '2026-06-09' }]);
    expect((await desk.get(`/till/invoices/${id}`)).text).toContain('Taken back in full');
    expect((await desk.get(`/till/invoices/${id}/credit`)).text).toContain('Nothing is left');
    expect(await issueInvoice(desk, jobId)).not.toBe(id);
    expect((await test.db.invoice.findMany({ orderBy: { number: 'asc' } })).map(({ number }) => number)).toEqual([
      '2026-0001',
      '2026-0002',
      'C-2026-0001',
    ]);
  });

  it('takes parts back, never more than is left, and the last one closes the cents', async () => {
    const id = await issueInvoice(desk, await finishedJob(test, staff));
    const { lines, totals } = await documentOf(id);
    const lineIds = lines.map(({ id: lineId }) => lineId);
    const blank = lines.map(() => '');
    const at = (row: number, value: string): string[] => blank.map((text, index) => (index === row ? value : text));
    const coolant = lines.findIndex(({ kind }) => kind === 'coolant');
    const first = idOf(
      await credit(id, { what: 'parts', reason: 'Half a litre was not used', lineIds, quantities: at(coolant, '0.5'), amounts: blank }),
    );
    expect((await rowOf(first)).taxExclusive.toFixed(2)).toBe('4.90');
    expect(await credit(id, { what: 'parts', reason: 'Too much', lineIds, quantities: at(coolant, '2.01'), amounts: blank })).toBe(
      `/till/invoices/${id}/credit`,
    );
    const refused = (await desk.get(`/till/invoices/${id}/credit`)).text;
    expect(refused).toContain('2 of it can still be credited');
    expect(refused).toContain('value="2.01"');
    await credit(id, { what: 'parts', reason: 'Goodwill', lineIds, quantities: blank, amounts: at(0, '10,01') });
    const last = idOf(await credit(id, { what: 'rest', reason: 'The rest' }));
    const notes = await test.db.invoice.findMany({ where: { originalId: id } });
    const sum = (part: 'taxExclusive' | 'vatTotal' | 'taxInclusive'): string =>
      notes.reduce((total, note) => total + Number(note[part]), 0).toFixed(2);
    expect([sum('taxExclusive'), sum('vatTotal'), sum('taxInclusive')]).toEqual([
      totals.taxExclusive,
      totals.vatTotal,
      totals.taxInclusive,
    ]);
    expect(
      await textOfPdf((await desk.get(`/till/invoices/${last}/document.pdf`).responseType('blob').expect(200)).body as Buffer),
    ).toContain('2026-0001');
  });

  it('prints what it corrects and why, and is a CreditNote in UBL', async () => {
    const id = await issueInvoice(desk, await finishedJob(test, staff));
    const noteId = idOf(await credit(id, { what: 'rest', reason: 'The car was another one' }));
    const pdf = await desk.get(`/till/invoices/${noteId}/document.pdf`).responseType('blob').expect(200);
    const text = await textOfPdf(pdf.body as Buffer);
    for (const words of ['Credit note', 'C-2026-0001', '2026-0001', 'The car was another one']) expect(text).toContain(words);
    const ubl = (await desk.get(`/api/v1/invoices/${noteId}/ubl.xml`).expect(200)).text;
    expect(ubl).toContain('<cbc:CreditNoteTypeCode>381</cbc:CreditNoteTypeCode>');
  });

  it('says what is wrong, and can itself neither be credited nor paid', async () => {
    const id = await issueInvoice(desk, await finishedJob(test, staff));
    expect(await credit(id, { what: 'parts', reason: 'Nothing chosen' })).toBe(`/till/invoices/${id}/credit`);
    expect((await desk.get(`/till/invoices/${id}/credit`)).text).toContain('Nothing is chosen');
    const noteId = idOf(await credit(id, { what: 'rest', reason: 'Wrong customer' }));
    await desk.get(`/till/invoices/${noteId}/credit`).expect(422);
    expect((await desk.get(`/till/invoices/${noteId}`)).text).not.toContain('Take a payment');
  });

  it('issues once, whatever is pressed twice', async () => {
    const id = await issueInvoice(desk, await finishedJob(test, staff));
    const marks = { ...formMarks((await desk.get(`/till/invoices/${id}/credit`)).text, 'credit'), what: 'rest', reason: 'Wrong customer' };
    const send = () => desk.post(`/till/invoices/${id}/credit`).type('form').send(marks);
    const [first, second] = await Promise.all([send(), send()]);
    expect(second.headers['location']).toBe(first.headers['location']);
    expect(await test.db.invoice.count({ where: { kind: 'credit-note' } })).toBe(1);
  });
});

describe('its money', () => {
  it('goes back to who had paid, and the job is squared only then', async () => {
    const jobId = await finishedJob(test, staff);
    const id = await issueInvoice(desk, jobId);
    const { payable } = await rowOf(id);
    const owed = () => test.db.jobDebt.count({ where: { jobId, kind: 'customer-money', endedAt: null } });
    await pay(id, payable.toFixed(2));
    expect(await owed()).toBe(0);
    await credit(id, { what: 'rest', reason: 'Wrong customer' });
    expect(await owed()).toBe(1);
    const page = (await desk.get(`/till/invoices/${id}`)).text;
    expect(page).toContain('We owe the customer');
    expect(page).not.toContain('Take a payment');
    await pay(id, payable.plus('0.01').toFixed(2), 'back');
    expect(await test.db.payment.count()).toBe(1);
    await pay(id, payable.toFixed(2), 'back');
    expect(await owed()).toBe(0);
  });

  it('counters a payment booked by mistake', async () => {
    const id = await issueInvoice(desk, await finishedJob(test, staff));
    await pay(id, '100');
    await pay(id, '100', 'back');
    const rows = await test.db.payment.findMany({ orderBy: { takenAt: 'asc' } });
    expect(rows.map(({ amount }) => amount.toFixed(2)).sort()).toEqual(['-100.00', '100.00']);
    expect((await desk.get(`/till/invoices/${id}`)).text).toContain('credited');
  });
});
