import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { composed, issued, sampleDraft } from '../fixtures/sample-draft.fixture.ts';
import { depositDeduction, type DepositDeductionRequest, depositLines, splitGross, type VatRow } from '../index.ts';

const row: VatRow = { category: 'S', rate: '20', taxable: '200.00', tax: '40.00' };
const lowRow: VatRow = { category: 'S', rate: '5', taxable: '40.00', tax: '2.00' };

describe('a deposit of a round sum', () => {
  it.each([
    ['100.00', '20', { net: '83.33', tax: '16.67', rounding: '0.00' }],
    // 82.64 + 17.35 and 82.65 + 17.36 both miss 100.00, so a cent of rounding is left.
    ['100.00', '21', { net: '82.64', tax: '17.35', rounding: '0.01' }],
    ['100.00', '0', { net: '100.00', tax: '0.00', rounding: '0.00' }],
    ['100.00', null, { net: '100.00', tax: '0.00', rounding: '0.00' }],
    ['0.01', '20', { net: '0.01', tax: '0.00', rounding: '0.00' }],
  ])('%s at %s %%', (gross, rate, split) => {
    expect(splitGross(gross, rate)).toEqual(split);
  });

  it('never misses by more than a cent, and net, tax and rounding make the whole', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000_000 }), fc.integer({ min: 0, max: 30 }), (cents, rate) => {
        const { net, tax, rounding } = splitGross((cents / 100).toFixed(2), String(rate));
        const asCents = (amount: string): number => Math.round(Number(amount) * 100);
        expect(asCents(net) + asCents(tax) + asCents(rounding)).toBe(cents);
        expect(Math.abs(asCents(rounding))).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('is spread over the rates of the estimate and payable exactly as received', () => {
    const answer = depositLines('100.00', [row, lowRow], { words: 'Deposit on job 1042' });
    if (!answer.ok) throw new Error('refused');
    const document = composed({
      ...sampleDraft,
      kind: 'deposit-invoice',
      lines: answer.value.lines,
      rounding: answer.value.rounding,
      allowances: [],
      charges: [],
      prepayments: [],
    });
    expect(answer.value.lines.map((line) => line.name)).toEqual(['Deposit on job 1042, VAT 20 %', 'Deposit on job 1042, VAT 5 %']);
    expect(document.totals.payable).toBe('100.00');
  });

  it('is payable exactly as received for any sum and estimate', () => {
    const rows = fc.array(fc.record({ rate: fc.integer({ min: 1, max: 25 }), cents: fc.integer({ min: 1, max: 500_000 }) }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), rows, (cents, entries) => {
        const unique = [...new Map(entries.map((entry) => [entry.rate, entry])).values()];
        const estimate = unique.map((entry): VatRow => ({
          category: 'S',
          rate: String(entry.rate),
          taxable: (entry.cents / 100).toFixed(2),
          tax: '0.00',
        }));
        const gross = (cents / 100).toFixed(2);
        const answer = depositLines(gross, estimate, { words: 'Deposit' });
        if (!answer.ok || answer.value.lines.length === 0) throw new Error('refused');
        const document = composed({
          ...sampleDraft,
          lines: answer.value.lines,
          rounding: answer.value.rounding,
          allowances: [],
          charges: [],
          prepayments: [],
        });
        expect(document.totals.payable).toBe(gross);
      }),
    );
  });

  it('wants a sum and an estimate', () => {
    expect(depositLines('0', [row], { words: 'x' })).toMatchObject({ ok: false, errors: [{ field: 'gross' }] });
    expect(depositLines('10', [], { words: 'x' })).toMatchObject({ ok: false, errors: [{ field: 'estimate' }] });
  });
});

describe('taking a deposit off the final invoice', () => {
  const request: DepositDeductionRequest = {
    form: 'tax-document',
    deposits: [
      {
        number: 'D-7',
        issueDate: '2026-06-03',
        vat: [
          { ...row, taxable: '83.33', tax: '16.67' },
          { ...lowRow, taxable: '10.00', tax: '0.50' },
        ],
      },
    ],
    received: [
      { amount: '110.50', date: '2026-06-03', method: 'card', depositNumber: 'D-7' },
      { amount: '20.00', date: '2026-06-09', method: 'cash', reference: 'R-12' },
    ],
    work: [row, lowRow],
  };

  it('writes a negative line per rate that names it, and counts as prepaid only money without a document', () => {
    const answer = depositDeduction(request);
    expect(answer).toEqual({
      ok: true,
      value: {
        lines: [
          {
            id: 'D-7 S 20',
            kind: 'deposit',
            name: 'Deposit D-7 of 2026-06-03, VAT 20 %',
            quantity: '-1',
            unit: 'C62',
            unitPrice: '83.33',
            vatCategory: 'S',
            vatRate: '20',
          },
          expect.objectContaining({ id: 'D-7 S 5', quantity: '-1', unitPrice: '10.00', vatRate: '5' }),
        ],
        preceding: [{ number: 'D-7', issueDate: '2026-06-03' }],
        prepayments: [{ amount: '20.00', date: '2026-06-09', method: 'cash', reference: 'R-12' }],
        warnings: [],
      },
    });
  });

  it('charges the VAT of the work once over both documents', () => {
    const answer = depositDeduction(request);
    if (!answer.ok) throw new Error('refused');
    const work = issued({
      ...sampleDraft,
      lines: [
        { id: '1', kind: 'labour', name: 'Work', quantity: '1', unit: 'C62', unitPrice: '200.00', vatCategory: 'S', vatRate: '20' },
        { id: '2', kind: 'part', name: 'Part', quantity: '1', unit: 'C62', unitPrice: '40.00', vatCategory: 'S', vatRate: '5' },
        ...answer.value.lines,
      ],
      allowances: [],
      charges: [],
      prepayments: answer.value.prepayments,
      preceding: answer.value.preceding,
    });
    expect(work.totals.vat.map((entry) => entry.tax)).toEqual(['23.33', '1.50']);
    // 40.00 + 2.00 of VAT on the work less 16.67 + 0.50 already charged with the deposit.
    expect(work.totals.vatTotal).toBe('24.83');
    expect(work.totals.payable).toBe('151.50');
  });

  it('warns when the deposit is more than the work at a rate', () => {
    const answer = depositDeduction({ ...request, work: [{ ...row, taxable: '50.00' }] });
    expect(answer.ok && answer.value.warnings).toEqual([
      expect.stringMatching(/VAT 20 %: deposits of 83.33 before tax are 33.33 more than the work of 50.00/),
      expect.stringMatching(/VAT 5 %: deposits of 10.00 before tax are 10.00 more than the work of 0.00/),
    ]);
  });

  it.each<[Partial<DepositDeductionRequest>, string, RegExp]>([
    [{ form: 'prepaid' }, 'deposits', /switched off in the settings/],
    [{ deposits: [...request.deposits, ...request.deposits] }, 'deposits', /named twice/],
    [{ deposits: [] }, 'received[0].depositNumber', /belongs to deposit D-7, which is not deducted/],
  ])('refuses %j', (changes, field, words) => {
    expect(depositDeduction({ ...request, ...changes })).toEqual({ ok: false, errors: [{ field, message: expect.stringMatching(words) }] });
  });

  it('takes plain prepaid money where deposits have no document', () => {
    const answer = depositDeduction({
      form: 'prepaid',
      deposits: [],
      received: [{ amount: '20.00', date: '2026-06-09', method: 'cash' }],
      work: [],
    });
    expect(answer).toMatchObject({ ok: true, value: { lines: [], prepayments: [{ amount: '20.00' }] } });
  });
});
