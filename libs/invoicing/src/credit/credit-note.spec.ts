import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { composed, issued, sampleDraft } from '../fixtures/sample-draft.fixture.ts';
import {
  type CreditItem,
  creditLeft,
  type CreditNote,
  creditNote,
  type CreditRequest,
  type DraftLine,
  freezeDocument,
  type InvoiceDocument,
  type IssuedDocument,
  outstanding,
  thawDocument,
} from '../index.ts';

function credit(original: IssuedDocument, earlier: readonly InvoiceDocument[], what: CreditRequest['what']): CreditNote {
  const answer = creditNote({ original, earlier, what, reason: 'Agreed on the phone' });
  if (!answer.ok) throw new Error(JSON.stringify(answer.errors));
  return answer.value;
}

const parts = (...items: readonly CreditItem[]): CreditRequest['what'] => ({ kind: 'parts', items });
const rest: CreditRequest['what'] = { kind: 'rest' };

const plainLine = (id: string, changes: Partial<DraftLine> = {}): DraftLine => ({
  id,
  kind: 'part',
  name: `Hose ${id}`,
  quantity: '1',
  unit: 'H87',
  unitPrice: '10.00',
  vatCategory: 'S',
  vatRate: '20',
  ...changes,
});

const invoiceOf = (...lines: readonly DraftLine[]): IssuedDocument =>
  issued({ ...sampleDraft, lines, allowances: [], charges: [], prepayments: [] });

describe('crediting a whole invoice', () => {
  const original = issued({ ...sampleDraft, rounding: '0.05' });
  const note = credit(original, [], rest);

  it('mirrors its lines, sums, VAT and rounding with the same signs, without what was paid', () => {
    expect(note.completes).toBe(true);
    expect(note.document.totals).toEqual({
      ...original.totals,
      prepaid: '0.00',
      payable: '306.30',
    });
    expect(note.document.lines.map((line) => line.net)).toEqual(original.lines.map((line) => line.net));
  });

  it('is a credit note of its own that names the original and the reason', () => {
    expect(note.document).toMatchObject({
      kind: 'credit-note',
      number: null,
      issueDate: null,
      preceding: [{ number: '2026-0413', issueDate: '2026-06-10' }],
      correctionReason: 'Agreed on the phone',
      prepayments: [],
    });
  });

  it('works for a simplified invoice without a customer', () => {
    const { buyer, ...anonymous } = sampleDraft;
    expect(buyer).toBeDefined();
    expect(credit(issued({ ...anonymous, form: 'simplified' }), [], rest).document).toMatchObject({
      form: 'simplified',
      kind: 'credit-note',
    });
  });

  it('leaves nothing', () => {
    expect(creditLeft(original, [note.document])).toEqual({
      rows: [
        { category: 'S', rate: '20', taxable: '0.00', tax: '0.00' },
        { category: 'S', rate: '5', taxable: '0.00', tax: '0.00' },
      ],
      rounding: '0.00',
    });
    expect(creditNote({ original, earlier: [note.document], what: rest, reason: 'again' })).toMatchObject({
      ok: false,
      errors: [{ message: 'Nothing of 2026-0413 is left to credit.' }],
    });
  });

  it('settles what is owed', () => {
    expect(outstanding(original, [], { payments: ['100.00'] })).toBe('156.30');
    expect(outstanding(original, [note.document], { payments: [] })).toBe('-50.00');
  });
});

describe('crediting a part', () => {
  it('takes pieces at their price with their share of the line discount', () => {
    const original = invoiceOf(plainLine('1', { quantity: '3', allowances: [{ amount: '4.50', reason: 'Fleet' }] }));
    const note = credit(original, [], parts({ kind: 'quantity', lineId: '1', quantity: '2' }));
    expect(note.document.lines[0]).toMatchObject({ quantity: '2', net: '17.00', allowances: [{ amount: '3.00', reason: 'Fleet' }] });
    expect(note.completes).toBe(false);
  });

  it('closes a line to the cent with its last piece', () => {
    // 3 × 0.335 = 1.005 → 1.01, while three single pieces would make 3 × 0.34 = 1.02.
    const original = invoiceOf(plainLine('1', { quantity: '3', unitPrice: '0.335' }));
    const one = parts({ kind: 'quantity', lineId: '1', quantity: '1' });
    const first = credit(original, [], one).document;
    const second = credit(original, [first], one).document;
    const third = credit(original, [first, second], one);
    expect([first, second, third.document].map((note) => note.lines[0]?.net)).toEqual(['0.34', '0.34', '0.33']);
    expect(third.document.lines[0]?.allowances).toEqual([{ amount: '0.01', reason: expect.stringContaining('Difference') }]);
    expect(third.completes).toBe(true);
  });

  it('gives the credit that completes a rate the remaining tax', () => {
    // Tax of 0.30 at 5 % is 0.015 → 0.02. Three credits of 0.10 would each carry 0.005 → 0.01, 0.03 together.
    const original = invoiceOf(plainLine('1', { quantity: '3', unitPrice: '0.10', vatRate: '5' }));
    expect(original.totals.vatTotal).toBe('0.02');
    const one = parts({ kind: 'quantity', lineId: '1', quantity: '1' });
    const first = credit(original, [], one).document;
    const second = credit(original, [first], one).document;
    const third = credit(original, [first, second], one).document;
    expect([first, second, third].map((note) => note.totals.vatTotal)).toEqual(['0.01', '0.01', '0.00']);
    expect(third.taxAdjustments).toEqual([{ category: 'S', rate: '5', computed: '0.01', taken: '0.00' }]);
    expect(thawDocument(freezeDocument(third)).ok).toBe(true);
  });

  it('takes money off a line and lets its pieces be credited later for what is left', () => {
    const original = invoiceOf(plainLine('1', { unitPrice: '100.00' }));
    const reduced = credit(original, [], parts({ kind: 'amount', lineId: '1', net: '10.00', words: 'Scratch' })).document;
    expect(reduced.totals.payable).toBe('12.00');
    const back = credit(original, [reduced], parts({ kind: 'quantity', lineId: '1', quantity: '1' }));
    expect(back.document.lines[0]?.net).toBe('90.00');
    expect(back.completes).toBe(true);
  });

  it('takes back the share of a discount on the whole invoice', () => {
    const original = issued({
      ...sampleDraft,
      lines: [plainLine('1', { unitPrice: '60.00' }), plainLine('2', { unitPrice: '40.00' })],
      allowances: [{ amount: '10.00', reason: 'Kept waiting', vatCategory: 'S', vatRate: '20' }],
      charges: [],
      prepayments: [],
    });
    const first = credit(original, [], parts({ kind: 'quantity', lineId: '2', quantity: '1' }));
    expect(first.document.totals).toMatchObject({ lineTotal: '40.00', allowanceTotal: '4.00', taxExclusive: '36.00', payable: '43.20' });
    const second = credit(original, [first.document], parts({ kind: 'quantity', lineId: '1', quantity: '1' }));
    expect(second.document.totals).toMatchObject({ allowanceTotal: '6.00', payable: '64.80' });
    expect(second.completes).toBe(true);
  });

  it('lets the credit of the last line take the cents of a discount that does not share evenly', () => {
    const original = issued({
      ...sampleDraft,
      lines: ['1', '2', '3'].map((id) => plainLine(id)),
      allowances: [{ amount: '0.10', reason: 'Kept waiting', vatCategory: 'S', vatRate: '20' }],
      charges: [],
      prepayments: [],
    });
    const notes: InvoiceDocument[] = [];
    for (const lineId of ['1', '2', '3']) notes.push(credit(original, notes, parts({ kind: 'quantity', lineId, quantity: '1' })).document);
    expect(notes.map((note) => note.totals.allowanceTotal)).toEqual(['0.03', '0.03', '0.04']);
    expect(creditLeft(original, notes).rows).toEqual([{ category: 'S', rate: '20', taxable: '0.00', tax: '0.00' }]);
  });

  it('never gives back more tax than was charged, however small the parts', () => {
    // Tax of 0.12 at 25 % is 0.03; each 0.02 alone would carry 0.005 → 0.01.
    const original = invoiceOf(plainLine('1', { unitPrice: '0.12', vatRate: '25' }));
    const notes: InvoiceDocument[] = [];
    for (let part = 1; part <= 6; part += 1)
      notes.push(credit(original, notes, parts({ kind: 'amount', lineId: '1', net: '0.02', words: 'x' })).document);
    expect(notes.map((note) => note.totals.vatTotal)).toEqual(['0.01', '0.01', '0.01', '0.00', '0.00', '0.00']);
  });

  it('credits a returned piece and a deposit line with their own sign', () => {
    const original = invoiceOf(plainLine('1', { unitPrice: '100.00' }), plainLine('2', { quantity: '-1', unitPrice: '40.00' }));
    const alone = creditNote({ original, earlier: [], what: parts({ kind: 'quantity', lineId: '1', quantity: '1' }), reason: 'x' });
    expect(alone).toMatchObject({
      ok: false,
      errors: [{ message: expect.stringMatching(/VAT 20 %: 60.00 before tax can still be credited, 100.00/) }],
    });
    const both = credit(
      original,
      [],
      parts({ kind: 'quantity', lineId: '1', quantity: '1' }, { kind: 'quantity', lineId: '2', quantity: '1' }),
    );
    expect(both.document.lines.map((line) => line.net)).toEqual(['100.00', '-40.00']);
    expect(both.completes).toBe(true);
  });

  it('closes what is left after goodwill, one line per rate', () => {
    const original = invoiceOf(plainLine('1', { unitPrice: '100.00' }), plainLine('2', { vatRate: '5' }));
    const goodwill = credit(
      original,
      [],
      parts({ kind: 'free', net: '33.33', words: 'Goodwill', vatCategory: 'S', vatRate: '20.0' }),
    ).document;
    const closing = credit(original, [goodwill], rest);
    expect(closing.document.lines.map((line) => [line.name, line.net])).toEqual([
      ['Rest of 2026-0413, VAT 20 %', '66.67'],
      ['Rest of 2026-0413, VAT 5 %', '10.00'],
    ]);
    expect(closing.completes).toBe(true);
    expect(creditLeft(original, [goodwill, closing.document]).rows.map((row) => [row.taxable, row.tax])).toEqual([
      ['0.00', '0.00'],
      ['0.00', '0.00'],
    ]);
  });

  it('reverses a negative row by its own sign', () => {
    const original = invoiceOf(plainLine('1'), plainLine('2', { quantity: '-1', unitPrice: '25.00', vatCategory: 'Z', vatRate: '0' }));
    const note = credit(original, [], rest);
    expect(note.document.totals.vat[1]).toMatchObject({ category: 'Z', taxable: '-25.00' });
    expect(note.completes).toBe(true);
  });
});

describe('what cannot be credited is answered with field and words', () => {
  const original = invoiceOf(plainLine('1', { quantity: '2' }), plainLine('2', { vatRate: '5' }));
  const answerTo = (what: CreditRequest['what'], reason = 'x'): unknown => creditNote({ original, earlier: [], what, reason });
  it.each<[CreditRequest['what'], string, RegExp]>([
    [parts(), 'items', /Nothing is chosen/],
    [parts({ kind: 'quantity', lineId: '9', quantity: '1' }), 'items[0].lineId', /has no line 9/],
    [parts({ kind: 'quantity', lineId: '1', quantity: '3' }), 'items[0].quantity', /"Hose 1": 2 of it can still be credited, not 3/],
    [parts({ kind: 'quantity', lineId: '1', quantity: '-1' }), 'items[0].quantity', /not above zero/],
    [parts({ kind: 'quantity', lineId: '1', quantity: 'all' }), 'items[0].quantity', /not a number/],
    [parts({ kind: 'amount', lineId: '1', net: '20.01', words: 'x' }), 'items[0].net', /20.00 before tax can still be credited, not 20.01/],
    [parts({ kind: 'amount', lineId: '1', net: '0', words: 'x' }), 'items[0].net', /not above zero/],
    [parts({ kind: 'free', net: '20.01', words: 'x', vatCategory: 'S', vatRate: '20' }), 'what', /VAT 20 %: 20.00 before tax can still/],
    [parts({ kind: 'free', net: '1', words: 'x', vatCategory: 'S', vatRate: '21' }), 'what', /VAT 21 %: 0.00 before tax can still/],
    [parts({ kind: 'free', net: '1', words: 'x', vatCategory: 'S', vatRate: '0' }), 'items[0].vatRate', /category S/],
    [
      parts({ kind: 'quantity', lineId: '1', quantity: '2' }, { kind: 'quantity', lineId: '1', quantity: '1' }),
      'items[1].quantity',
      /0 of it can still be credited/,
    ],
  ])('%j', (what, field, words) => {
    expect(answerTo(what)).toEqual({ ok: false, errors: [{ field, message: expect.stringMatching(words) }] });
  });

  it('wants a reason', () => {
    expect(answerTo(rest, ' ')).toMatchObject({ ok: false, errors: [{ field: 'reason' }] });
  });

  it('throws when the earlier documents belong to another invoice', () => {
    expect(() => creditLeft(original, [composed(sampleDraft)])).toThrow('does not correct 2026-0413');
  });
});

describe('any series of credits', () => {
  const line = fc.record({
    quantity: fc.integer({ min: 1, max: 9 }),
    cents: fc.integer({ min: 1, max: 99_999 }),
    rate: fc.constantFrom('5', '20', '21'),
    sign: fc.constantFrom(1, 1, 1, -1),
  });
  const step = fc.record({
    line: fc.nat({ max: 4 }),
    quantity: fc.integer({ min: 1, max: 9 }),
    byAmount: fc.boolean(),
    cents: fc.integer({ min: 1, max: 99_999 }),
  });

  it('never exceeds the original, and the rest closes it to the cent', () => {
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 5 }),
        fc.array(step, { maxLength: 8 }),
        fc.nat({ max: 500 }),
        (lines, steps, discount) => {
          const original = issued({
            ...sampleDraft,
            lines: lines.map((entry, index) =>
              plainLine(String(index), {
                quantity: String(entry.sign * entry.quantity),
                unitPrice: (entry.cents / 1000).toFixed(3),
                vatRate: entry.rate,
              }),
            ),
            allowances:
              discount === 0
                ? []
                : [{ amount: (discount / 100).toFixed(2), reason: 'x', vatCategory: 'S', vatRate: lines[0]?.rate ?? '20' }],
            charges: [],
            prepayments: [],
          });
          const notes: InvoiceDocument[] = [];
          for (const { line: at, quantity, byAmount, cents } of steps) {
            const lineId = String(at % lines.length);
            const item: CreditItem = byAmount
              ? { kind: 'amount', lineId, net: (cents / 100).toFixed(2), words: 'x' }
              : { kind: 'quantity', lineId, quantity: String(quantity) };
            const answer = creditNote({ original, earlier: notes, what: parts(item), reason: 'x' });
            if (answer.ok) notes.push(answer.value.document);
            for (const [index, row] of creditLeft(original, notes).rows.entries()) {
              const whole = original.totals.vat[index];
              expect(Math.abs(Number(row.taxable))).toBeLessThanOrEqual(Math.abs(Number(whole?.taxable)));
              expect(Math.abs(Number(row.tax))).toBeLessThanOrEqual(Math.abs(Number(whole?.tax)));
              expect(Number(row.taxable) * Number(whole?.taxable)).toBeGreaterThanOrEqual(0);
            }
          }
          const open = creditLeft(original, notes).rows.some((row) => Number(row.taxable) !== 0);
          if (open) notes.push(credit(original, notes, rest).document);
          const left = creditLeft(original, notes);
          expect(left.rows.every((row) => row.taxable === '0.00' && row.tax === '0.00')).toBe(true);
          expect(outstanding(original, notes, { payments: [] })).toBe('0.00');
        },
      ),
      { numRuns: 150 },
    );
  });
});
