import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { pdfStructure, STANDARD_ROLES } from '../support/pdf-structure.ts';
import { textOfPdf } from '../support/pdf-text.ts';
import { type Agent, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';
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

const issued = async (): Promise<string> => issueInvoice(desk, await finishedJob(test, staff));

async function file(id: string, name: string): Promise<Buffer> {
  const answer = await desk.get(`/api/v1/invoices/${id}/${name}`).responseType('blob').expect(200);
  return answer.body as Buffer;
}

function hasQpdf(): boolean {
  try {
    execFileSync('qpdf', ['--version']);
    return true;
  } catch {
    return false;
  }
}

describe('the hybrid PDF', () => {
  it('carries the structured invoice, byte for byte, as an alternative of the page', async () => {
    const id = await issued();
    const pdf = await file(id, 'document.pdf');
    const { attachments } = await pdfStructure(pdf);
    expect(attachments.map(({ name, relationship, isAssociated }) => ({ name, relationship, isAssociated }))).toEqual([
      { name: 'factur-x.xml', relationship: 'Alternative', isAssociated: true },
    ]);
    expect(Buffer.compare(Buffer.from(attachments[0]?.bytes ?? []), await file(id, 'cii.xml'))).toBe(0);
  });

  it('is structured as PDF/A-3b, and its tags, title and language stay', async () => {
    const structure = await pdfStructure(await file(await issued(), 'document.pdf'));
    expect(structure).toMatchObject({
      outputIntentN: 3,
      hasId: true,
      isMarked: true,
      lang: 'en-GB',
      title: 'Invoice 2026-0001',
      showsTitle: true,
      bareFonts: [],
      hasTransparency: false,
      roleMap: { Strong: 'Span', Em: 'Span' },
    });
    expect(structure.xmp).toContain('<pdfaid:part>3</pdfaid:part>');
    expect(structure.xmp).toContain('<pdfaid:conformance>B</pdfaid:conformance>');
    expect(structure.xmp).toContain('<fx:ConformanceLevel>EN 16931</fx:ConformanceLevel>');
    expect(structure.xmp.match(/pdfaExtension:schemas>/g)).toHaveLength(2); // one Bag: opened and closed once
    for (const role of ['H1', 'H2', 'Table', 'TH', 'TD']) expect(structure.roles).toContain(role);
    expect(structure.roles.filter((role) => !STANDARD_ROLES.includes(role) && !(role in structure.roleMap))).toEqual([]);
  });

  (hasQpdf() ? it : it.skip)('passes qpdf --check (skipped where qpdf is not installed)', async () => {
    const pdf = await file(await issued(), 'document.pdf');
    const folder = mkdtempSync(path.join(os.tmpdir(), 'runwarm-qpdf-'));
    try {
      const name = path.join(folder, 'invoice.pdf');
      writeFileSync(name, pdf);
      expect(execFileSync('qpdf', ['--check', name], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors found');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('is the same bytes at every asking, whatever is set afterwards', async () => {
    const id = await issued();
    const first = await file(id, 'document.pdf');
    await test.db.workshop.update({ where: { id: 1 }, data: { name: 'Another Name', pdfForm: 'plain' } });
    expect(Buffer.compare(first, await file(id, 'document.pdf'))).toBe(0);
  });
});

describe('which PDF is made', () => {
  it.each([
    { pdfForm: 'plain', vatId: 'IE1234567X', carries: 0 },
    { pdfForm: 'hybrid-for-business', vatId: '', carries: 0 },
    { pdfForm: 'hybrid-for-business', vatId: 'IE1234567X', carries: 1 },
    { pdfForm: 'hybrid', vatId: '', carries: 1 },
  ])('is $pdfForm’s, customer’s VAT number “$vatId”', async ({ pdfForm, vatId, carries }) => {
    await test.db.workshop.update({ where: { id: 1 }, data: { pdfForm } });
    const jobId = await finishedJob(test, staff);
    await test.db.customer.updateMany({ data: { vatId } });
    const { attachments, isMarked, roles } = await pdfStructure(await file(await issueInvoice(desk, jobId), 'document.pdf'));
    expect(attachments).toHaveLength(carries);
    expect(isMarked).toBe(true);
    expect(roles.filter((role) => !STANDARD_ROLES.includes(role))).toEqual([]);
  });
});

describe('structured invoices', () => {
  it('say what the frozen record says', async () => {
    const id = await issued();
    const { totals } = (await test.db.invoice.findUniqueOrThrow({ where: { id } })).document as unknown as {
      totals: Record<string, string>;
    };
    const ubl = (await file(id, 'ubl.xml')).toString();
    const cii = (await file(id, 'cii.xml')).toString();
    for (const [xml, payable] of [
      [ubl, /<cbc:PayableAmount currencyID="EUR">([\d.]+)</],
      [cii, /<ram:DuePayableAmount>([\d.]+)</],
    ] as const)
      expect(payable.exec(xml)?.[1]).toBe(totals['payable']);
    expect(await textOfPdf(await file(id, 'document.pdf'))).toContain(totals['payable'] ?? 'no sum');
    expect((await test.db.invoiceFile.findMany({ orderBy: { kind: 'asc' } })).map(({ kind }) => kind)).toEqual(['cii', 'pdf', 'ubl']);
  });

  it('are refused with what is missing; the page is then printed without', async () => {
    const jobId = await finishedJob(test, staff);
    await test.db.workshop.update({ where: { id: 1 }, data: { vatId: '0000000T' } });
    const id = await issueInvoice(desk, jobId);
    const refusal = await desk.get(`/api/v1/invoices/${id}/ubl.xml`).expect(422);
    expect(refusal.body).toMatchObject({ type: expect.stringContaining('not-structured') as unknown });
    expect(JSON.stringify(refusal.body)).toContain('two letters of the country');
    expect((await pdfStructure(await file(id, 'document.pdf'))).attachments).toEqual([]);
    expect((await desk.get(`/till/invoices/${id}`).expect(200)).text).toContain('can’t be sent as a structured invoice');
  });
});
