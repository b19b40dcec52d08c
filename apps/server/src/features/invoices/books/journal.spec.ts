import { describe, expect, it } from '@jest/globals';
import { parse } from 'csv-parse/sync';
import { composeDocument, type InvoiceDraft } from '#libs/invoicing';
import { csvText } from '../../../platform/csv-text.ts';
import type { JournalDocument, JournalPayment } from './books.repository.ts';
import { journalRows } from './journal.ts';

const draft: InvoiceDraft = {
  kind: 'invoice',
  form: 'full',
  number: '2026-0001',
  issueDate: '2026-06-09',
  currency: 'EUR',
  language: 'en-GB',
  seller: { name: 'Testbed Motors', address: { lines: [], countryCode: 'IE' } },
  paymentMeans: [],
  preceding: [],
  lines: [
    { id: '1', kind: 'labour', name: 'Labour', quantity: '2', unit: 'HUR', unitPrice: '60', vatCategory: 'S', vatRate: '23' },
    { id: '2', kind: 'other', name: 'Map', quantity: '1', unit: 'H87', unitPrice: '10', vatCategory: 'S', vatRate: '5' },
  ],
  allowances: [],
  charges: [],
  prepayments: [{ amount: '20.00', date: '2026-06-08', method: 'cash' }],
  exemptions: [],
  legalMarks: [],
  notes: [],
};

function document(change: Partial<JournalDocument> = {}): JournalDocument {
  const composed = composeDocument(draft);
  if (!composed.ok) throw new Error(JSON.stringify(composed.errors));
  return {
    number: '2026-0001',
    kind: 'invoice',
    issuedOn: new Date('2026-06-09T00:00:00Z'),
    customerNumber: 7,
    customerName: '=HYPERLINK("x")',
    jobNumber: 1042,
    originalNumber: null,
    document: composed.value,
    ...change,
  };
}

const payment: JournalPayment = {
  paidOn: new Date('2026-06-08T00:00:00Z'),
  amount: '-20.00',
  method: 'cash',
  reference: '',
  why: 'did not come',
  number: '',
  jobNumber: 1042,
  customerName: 'Odile Quill',
  currency: 'EUR',
};

const read = (rows: ReturnType<typeof journalRows>): Record<string, string>[] =>
  parse<Record<string, string>>(csvText(rows), { columns: true });

describe('the journal', () => {
  it('has a row per rate, with once-per-document sums in the first, and no formula', () => {
    const rows = read(journalRows([document()], []));
    expect(rows).toMatchObject([
      {
        net: '120.00',
        tax: '27.60',
        gross: '147.60',
        'tax rate %': '23',
        prepaid: '20.00',
        payable: '138.10',
        customer: `'=HYPERLINK("x")`,
      },
      { net: '10.00', tax: '0.50', gross: '10.50', 'tax rate %': '5', prepaid: '', payable: '' },
    ]);
  });

  it('takes credit notes back and puts everything in the order of its day', () => {
    const credit = document({ kind: 'credit-note', number: 'C-2026-0001', originalNumber: '2026-0001' });
    const rows = read(journalRows([document(), credit], [payment]));
    expect(rows.map(({ entry }) => entry)).toEqual(['paid back', 'invoice', 'invoice', 'credit-note', 'credit-note']);
    const sum = (column: string): number => rows.reduce((total, row) => total + Number(row[column]), 0);
    expect([sum('net'), sum('tax'), sum('payable'), sum('paid')]).toEqual([0, 0, 0, -20]);
    expect(rows[0]?.['reference']).toBe('did not come');
    expect(rows[3]?.['corrects']).toBe('2026-0001');
  });
});
