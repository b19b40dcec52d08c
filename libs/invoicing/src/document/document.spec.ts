import { describe, expect, it } from '@jest/globals';
import { composed, issued, sampleDraft } from '../fixtures/sample-draft.fixture.ts';
import { composeDocument, freezeDocument, type InvoiceDraft, thawDocument, units } from '../index.ts';

const [labour, part, coolant] = sampleDraft.lines;
if (labour === undefined || part === undefined || coolant === undefined) throw new Error('The sample has three lines.');

describe('composing a document', () => {
  it('computes lines and sums', () => {
    const document = composed(sampleDraft);
    expect(document.lines.map((line) => line.net)).toEqual(['148.80', '92.40', '24.01']);
    expect(document.totals).toMatchObject({
      lineTotal: '265.21',
      taxExclusive: '258.21',
      vat: [
        { category: 'S', rate: '20', taxable: '234.20', tax: '46.84' },
        { category: 'S', rate: '5', taxable: '24.01', tax: '1.20' },
      ],
      taxInclusive: '306.25',
      prepaid: '50.00',
      payable: '256.25',
    });
    expect(document.taxAdjustments).toEqual([]);
  });

  it('adds the standard ground of a category that has one, and leaves a given one alone', () => {
    const reverse: InvoiceDraft = { ...sampleDraft, lines: [{ ...labour, vatCategory: 'AE', vatRate: null }], allowances: [], charges: [] };
    expect(composed(reverse).exemptions).toEqual([{ category: 'AE', text: 'Reverse charge', code: 'VATEX-EU-AE' }]);
    const own = [{ category: 'AE', text: 'Umkehrung der Steuerschuld' }] as const;
    expect(composed({ ...reverse, exemptions: own }).exemptions).toEqual(own);
  });

  it('leaves the draft as it was', () => {
    const before = JSON.stringify(sampleDraft);
    composed(sampleDraft);
    expect(JSON.stringify(sampleDraft)).toBe(before);
  });
});

describe('a draft that cannot be composed is answered with field and words', () => {
  const line = (changes: object): InvoiceDraft => ({ ...sampleDraft, lines: [{ ...labour, ...changes }] });
  it.each<[InvoiceDraft, string, RegExp]>([
    [{ ...sampleDraft, lines: [] }, 'lines', /no line/],
    [line({ quantity: 'two' }), 'lines[0].quantity', /Line 1: the quantity "two" is not a number/],
    [line({ name: ' ' }), 'lines[0].name', /does not say what it is for/],
    [line({ unit: 'hours' }), 'lines[0].unit', /no unit code. Choose a unit such as HUR/],
    [line({ id: '' }), 'lines[0].id', /no id of its own/],
    [{ ...sampleDraft, lines: [labour, labour] }, 'lines[1].id', /no id of its own/],
    [line({ allowances: [{ amount: '5.005', reason: 'x' }] }), 'lines[0].allowances[0].amount', /more than 2 decimals/],
    [line({ allowances: [{ amount: '5', reason: '' }] }), 'lines[0].allowances[0].reason', /has no reason/],
    [line({ charges: [{ amount: '5', reason: '' }] }), 'lines[0].charges[0].reason', /Line 1: the charge has no reason/],
    [
      { ...sampleDraft, allowances: [{ amount: '1', reason: '', vatCategory: 'S', vatRate: '20' }] },
      'allowances[0].reason',
      /has no reason/,
    ],
    [{ ...sampleDraft, currency: 'Euro' }, 'currency', /three capital letters/],
    [
      { ...sampleDraft, seller: { ...sampleDraft.seller, address: { lines: [], countryCode: 'Ireland' } } },
      'seller.address.countryCode',
      /two letters of ISO 3166/,
    ],
    [{ ...sampleDraft, supplyDate: '2026-02-29' }, 'supplyDate', /not a day of the calendar/],
    [{ ...sampleDraft, dueDate: '10.06.2026' }, 'dueDate', /Write it as 2026-06-10/],
    [{ ...sampleDraft, issueDate: '2026-07-01' }, 'dueDate', /before its date/],
    [{ ...sampleDraft, supplyPeriod: { start: '2026-06-10', end: '2026-06-09' } }, 'supplyPeriod.end', /before it starts/],
    [{ ...sampleDraft, prepayments: [{ amount: '-5', date: '2026-06-09', method: 'cash' }] }, 'prepayments[0].amount', /below zero/],
    [{ ...sampleDraft, exemptions: [{ category: 'S', text: 'x' }] }, 'exemptions[0]', /takes no ground/],
    [{ ...sampleDraft, accounting: { currency: 'SEK', vatTotal: 'x', rateWords: '' } }, 'accounting.vatTotal', /not a number/],
  ])('%#', (draft, field, words) => {
    const answer = composeDocument(draft);
    expect(answer).toEqual({ ok: false, errors: [{ field, message: expect.stringMatching(words) }] });
  });
});

describe('the frozen record of a document', () => {
  it('reads back the same', () => {
    const document = issued(sampleDraft);
    const thawed = thawDocument(freezeDocument(document));
    expect(thawed).toEqual({ ok: true, value: document });
  });

  it('is the same text whatever the order of keys', () => {
    const document = issued(sampleDraft);
    const turned = Object.fromEntries(Object.entries(document).reverse()) as unknown as typeof document;
    expect(freezeDocument(turned)).toBe(freezeDocument(document));
  });

  it.each([
    ['not JSON', 'schemaVersion'],
    ['null', 'schemaVersion'],
    ['{"schemaVersion":2}', 'schemaVersion'],
    ['{"schemaVersion":1}', 'schemaVersion'],
    [freezeDocument(composed(sampleDraft)).replace('"payable":"256.25"', '"payable":"25.62"'), 'totals'],
    [freezeDocument(composed(sampleDraft)).replace('"net":"148.80"', '"net":"148.81"'), 'totals'],
    [freezeDocument(composed(sampleDraft)).replace('"tax":"46.84"', '"tax":"46.85"'), 'totals'],
  ])('refuses %s', (text, field) => {
    expect(thawDocument(text)).toEqual({ ok: false, errors: [{ field, message: expect.stringContaining('Take it from a backup') }] });
  });
});

it('has one entry per unit code', () => {
  expect(new Set(units.map((unit) => unit.code)).size).toBe(units.length);
});
