import { describe, expect, it } from '@jest/globals';
import { composed, issued, sampleDraft } from '../fixtures/sample-draft.fixture.ts';
import {
  creditNote,
  type InvoiceDocument,
  type InvoiceDraft,
  type InvoiceRules,
  missingContents,
  structuredProblems,
  type VatCategory,
} from '../index.ts';

const rules: InvoiceRules = { simplifiedLimit: '250.00', accountingCurrency: 'EUR', cashAccounting: false };
const check = (
  document: InvoiceDocument,
  changes: Partial<InvoiceRules> = {},
  stage: 'before-issue' | 'issued' = 'before-issue',
): string[] => missingContents(document, { rules: { ...rules, ...changes }, stage }).map((missing) => `${missing.basis}: ${missing.field}`);

function inCategory(vatCategory: VatCategory, changes: Partial<InvoiceDraft> = {}): InvoiceDocument {
  return composed({
    ...sampleDraft,
    lines: sampleDraft.lines.map((line) => ({ ...line, vatCategory, vatRate: null })),
    allowances: [],
    charges: [],
    ...changes,
  });
}

const noAddress = { lines: [], countryCode: '' };

describe('a full invoice (art. 226)', () => {
  it('lacks nothing when complete', () => {
    expect(check(composed(sampleDraft))).toEqual([]);
    expect(check(issued(sampleDraft), {}, 'issued')).toEqual([]);
  });

  it('lacks its number and date only once issued', () => {
    expect(check(composed(sampleDraft), {}, 'issued')).toEqual(['art. 226(1): issueDate', 'art. 226(2): number']);
  });

  it.each<[Partial<InvoiceDraft>, string[]]>([
    [{ seller: { ...sampleDraft.seller, vatId: undefined } }, ['art. 226(3): seller.vatId']],
    [{ seller: { ...sampleDraft.seller, vatId: undefined, taxRegistrationId: '77' } }, []],
    [{ seller: { ...sampleDraft.seller, name: '' } }, ['art. 226(5): seller.name']],
    [{ seller: { ...sampleDraft.seller, address: noAddress } }, ['art. 226(5): seller.address']],
    [{ buyer: { name: '', address: noAddress } }, ['art. 226(5): buyer.name', 'art. 226(5): buyer.address']],
    [{ buyer: { name: 'X', address: { lines: ['1 Road'], countryCode: 'IE' } } }, ['art. 226(5): buyer.address']],
    [{ taxRepresentative: { name: 'R', address: noAddress } }, ['art. 226(15): taxRepresentative']],
    [{ currency: 'SEK' }, ['art. 230: accounting']],
    [{ currency: 'SEK', accounting: { currency: 'EUR', vatTotal: '4.20', rateWords: '1 EUR = 11.20 SEK' } }, []],
  ])('%j', (changes, missing) => {
    expect(check(composed({ ...sampleDraft, ...changes }))).toEqual(missing);
  });

  it('wants the day of the work, or of the deposit, or a period', () => {
    const { supplyDate: day, ...undated } = sampleDraft;
    expect(day).toBe('2026-06-10');
    expect(check(composed(undated))).toEqual(['art. 226(7): supplyDate']);
    expect(check(composed({ ...undated, supplyPeriod: { end: '2026-06-10' } }))).toEqual([]);
    const [missing] = missingContents(composed({ ...undated, kind: 'deposit-invoice' }), { rules, stage: 'before-issue' });
    expect(missing?.what).toBe('The day the deposit was received');
  });

  it("wants the customer's VAT number for reverse charge and supplies to another country", () => {
    expect(check(inCategory('AE'))).toEqual(['art. 226(4): buyer.vatId']);
    expect(check(inCategory('K'))).toEqual(['art. 226(4): buyer.vatId']);
    expect(check(inCategory('G'))).toEqual([]);
  });

  it('wants the ground of an exemption', () => {
    expect(check(inCategory('E'))).toEqual(['art. 226(11): exemptions']);
    expect(check(inCategory('E', { exemptions: [{ category: 'E', text: 'Small business, art. 284' }] }))).toEqual([]);
    expect(check(inCategory('Z'))).toEqual([]);
  });

  it('wants the words "Cash accounting" where that is set', () => {
    expect(check(composed(sampleDraft), { cashAccounting: true })).toEqual(['art. 226(7a): legalMarks']);
    expect(check(composed({ ...sampleDraft, legalMarks: ['cash-accounting'] }), { cashAccounting: true })).toEqual([]);
  });

  it('says in words what is missing, where to enter it and how the rule is known', () => {
    const [missing] = missingContents(composed({ ...sampleDraft, seller: { ...sampleDraft.seller, vatId: undefined } }), {
      rules,
      stage: 'before-issue',
    });
    expect(missing).toEqual({
      field: 'seller.vatId',
      what: 'The VAT number of the workshop',
      where: 'Office, workshop details',
      basis: 'art. 226(3)',
      mark: 'read',
    });
  });
});

describe('a simplified invoice (art. 226b)', () => {
  const small = { ...sampleDraft, form: 'simplified', lines: sampleDraft.lines.slice(0, 1), allowances: [], charges: [] } as const;
  const { buyer, ...anonymous } = small;

  it('needs neither customer nor day of the work nor number', () => {
    expect(buyer?.name).toContain('Odile');
    const { supplyDate: day, ...undated } = anonymous;
    expect(day).toBeDefined();
    expect(check({ ...composed(undated), issueDate: '2026-06-10' }, {}, 'issued')).toEqual([]);
    expect(check(composed(undated), {}, 'issued')).toEqual(['art. 226b(a): issueDate']);
  });

  it('is refused above the limit, to the cent', () => {
    expect(check(composed(anonymous), { simplifiedLimit: '178.56' })).toEqual([]);
    expect(check(composed(anonymous), { simplifiedLimit: '178.55' })).toEqual(['art. 220a and 238: form']);
    expect(check(composed(anonymous), { simplifiedLimit: null })).toEqual(['art. 220a: form']);
  });

  it('is refused for supplies to another EU country', () => {
    expect(check(inCategory('K', { form: 'simplified', prepayments: [] }), { simplifiedLimit: '9999' })).toEqual(['art. 220a(2): form']);
    const abroad = { name: 'X', address: { lines: ['1 Rue'], city: 'Brest', countryCode: 'FR' } };
    expect(check(inCategory('AE', { form: 'simplified', buyer: abroad }), { simplifiedLimit: '9999' })).toEqual(['art. 220a(2): form']);
    expect(check(inCategory('AE', { form: 'simplified' }), { simplifiedLimit: '9999' })).toEqual([]);
  });

  it('needs to say who supplies', () => {
    expect(check(composed({ ...anonymous, seller: { name: '', address: noAddress } }))).toEqual(['art. 226b(b): seller.name']);
  });
});

describe('a credit note (art. 219)', () => {
  const note = creditNote({ original: issued(sampleDraft), earlier: [], what: { kind: 'rest' }, reason: 'Wrong customer' });
  if (!note.ok) throw new Error('refused');

  it('lacks nothing as made', () => {
    expect(check(note.value.document)).toEqual([]);
  });

  it('must name the invoice and what is amended', () => {
    expect(check({ ...note.value.document, preceding: [], correctionReason: '' })).toEqual([
      'art. 219: preceding',
      'art. 219 and 226b(e): correctionReason',
    ]);
  });
});

describe('a structured invoice (EN 16931)', () => {
  const lacks = (document: InvoiceDocument): string[] =>
    structuredProblems(document).map((problem) => `${problem.basis}: ${problem.field}`);

  it('lacks nothing when complete', () => {
    expect(lacks(composed(sampleDraft))).toEqual([]);
  });

  it.each<[Partial<InvoiceDraft>, string[]]>([
    [{ dueDate: undefined, paymentTerms: undefined }, ['BR-CO-25: dueDate']],
    [{ dueDate: undefined }, []],
    [{ paymentMeans: [{ method: 'credit-transfer' }] }, ['BR-61: paymentMeans']],
    [{ seller: { ...sampleDraft.seller, vatId: '1234567X' } }, ['BR-CO-09: seller.vatId']],
    [{ seller: { name: 'A', address: { lines: [], countryCode: 'IE' } } }, ['BR-CO-26: seller.vatId', 'BR-S-02: seller.vatId']],
    [{ buyer: { name: '', address: noAddress } }, ['BR-07: buyer.name', 'BR-11: buyer.address.countryCode']],
  ])('%j', (changes, problems) => {
    expect(lacks(composed({ ...sampleDraft, ...changes }))).toEqual(problems);
  });

  it('knows what the categories need', () => {
    const { supplyDate: day, ...undated } = sampleDraft;
    expect(day).toBeDefined();
    expect(lacks(inCategory('AE'))).toEqual(['BR-AE-02: buyer.vatId']);
    expect(lacks(inCategory('K'))).toEqual(['BR-IC-02: buyer.vatId', 'BR-IC-12: deliverTo']);
    expect(lacks(inCategory('E'))).toEqual(['BR-E-10: exemptions']);
    expect(lacks(inCategory('O'))).toEqual([]);
    const { legalRegistration: company, ...unregistered } = sampleDraft.seller;
    expect(company?.id).toBe('204118');
    expect(lacks(inCategory('O', { seller: unregistered }))).toEqual(['BR-CO-26: seller.legalRegistration']);
    expect(lacks(composed({ ...sampleDraft, seller: unregistered }))).toEqual([]);
    expect(
      lacks(
        composed({
          ...undated,
          lines: sampleDraft.lines.map((line) => ({ ...line, vatCategory: 'K', vatRate: null })),
          allowances: [],
          charges: [],
        }),
      ),
    ).toContain('BR-IC-11: supplyDate');
    const mixed = [
      ...sampleDraft.lines.slice(0, 1),
      ...sampleDraft.lines.slice(1).map((line) => ({ ...line, vatCategory: 'O' as const, vatRate: null })),
    ];
    expect(lacks(composed({ ...sampleDraft, lines: mixed }))).toEqual(['BR-O-11: lines']);
  });

  it('asks no due date of what is paid or credited', () => {
    const paid = {
      ...sampleDraft,
      dueDate: undefined,
      paymentTerms: undefined,
      prepayments: [{ amount: '306.25', date: '2026-06-10', method: 'card' as const }],
    };
    expect(lacks(composed(paid))).toEqual([]);
  });
});
