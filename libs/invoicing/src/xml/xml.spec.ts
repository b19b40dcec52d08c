import { describe, expect, it } from '@jest/globals';
import { ciiSequences } from '../fixtures/cii-sequences.fixture.ts';
import { find, type ReadElement, readXml, texts } from '../fixtures/read-xml.fixture.ts';
import { composed, issued, sampleDraft } from '../fixtures/sample-draft.fixture.ts';
import { ublSequences } from '../fixtures/ubl-sequences.fixture.ts';
import { creditNote, type InvoiceDocument, type InvoiceDraft, toCii, toUbl, type VatCategory } from '../index.ts';

const plain = issued(sampleDraft);
const bare = issued({
  ...sampleDraft,
  seller: { name: 'A', address: { lines: ['1 Road'], city: 'B', countryCode: 'IE' }, taxRegistrationId: '77' },
  buyer: { name: 'C', address: { lines: [], countryCode: 'IE' } },
  lines: sampleDraft.lines.slice(0, 1),
  ...{ allowances: [], charges: [], prepayments: [], notes: [], paymentMeans: [] },
});

function credited(): InvoiceDocument {
  const note = creditNote({ original: plain, earlier: [], what: { kind: 'rest' }, reason: 'Wrong customer' });
  if (!note.ok) throw new Error(JSON.stringify(note.errors));
  return { ...note.value.document, number: 'C-7', issueDate: '2026-06-12', dueDate: '2026-06-30', paymentMeans: sampleDraft.paymentMeans };
}

function inCategory(vatCategory: VatCategory, changes: Partial<InvoiceDraft> = {}): InvoiceDocument {
  return issued({
    ...sampleDraft,
    lines: sampleDraft.lines.map((line) => ({ ...line, vatCategory, vatRate: null })),
    allowances: [],
    charges: [],
    ...changes,
  });
}

const intraCommunity = inCategory('K', {
  supplyPeriod: { start: '2026-06-09', end: '2026-06-10' },
  deliverTo: { lines: ['Quai 3'], city: 'Brest', countryCode: 'FR' },
  taxRepresentative: { name: 'Rep', address: { lines: ['2 Road'], city: 'D', countryCode: 'FR' }, vatId: 'FR99' },
  accounting: { currency: 'SEK', vatTotal: '0.00', rateWords: '11.2' },
  legalMarks: ['cash-accounting'],
  contractReference: 'CT-1',
});
const documents = [
  ['an invoice with everything', plain],
  ['an invoice with the least', bare],
  ['a deposit invoice', issued({ ...sampleDraft, kind: 'deposit-invoice' }, 'D-1')],
  ['a credit note', credited()],
  ['a supply to another country', intraCommunity],
  ['outside the scope of VAT', inCategory('O')],
] as const;

/** Children stand in the published order, needed ones are there, only repeatable ones repeat, none is unknown. */
function checkSequence(element: ReadElement, sequence: readonly string[]): void {
  const rules = sequence.map((entry) => ({ name: entry.replace(/[!*]+$/, ''), needed: entry.includes('!'), repeats: entry.endsWith('*') }));
  const names = element.children.map((child) => child.name);
  const places = names.map((name) => rules.findIndex((rule) => rule.name === name));
  expect({ in: element.name, unknown: names.filter((_, index) => places[index] === -1) }).toEqual({ in: element.name, unknown: [] });
  expect({ in: element.name, places }).toEqual({ in: element.name, places: [...places].sort((a, b) => a - b) });
  for (const rule of rules) {
    const count = names.filter((name) => name === rule.name).length;
    const least = rule.needed ? 1 : 0;
    expect({ in: element.name, name: rule.name, fits: count >= least && (rule.repeats || count <= 1) }).toMatchObject({ fits: true });
  }
}

function checkUbl(element: ReadElement): void {
  const sequence = ublSequences[element.name];
  if (element.children.length > 0 || sequence !== undefined) checkSequence(element, sequence ?? []);
  else expect(element.text.trim()).not.toBe('');
  element.children.forEach(checkUbl);
}

const withoutPrefix = (name: string): string => name.replace(/^\w+:/, '');

function checkCii(element: ReadElement, type: string): void {
  const rows = ciiSequences[type] ?? [];
  const bareNames: ReadElement = { ...element, children: element.children.map((child) => ({ ...child, name: withoutPrefix(child.name) })) };
  checkSequence(
    bareNames,
    rows.map((row) => row.replace(/\.\w+/, '')),
  );
  for (const child of element.children) {
    const row = rows.find((candidate) => candidate.replace(/[.!*].*$/, '') === withoutPrefix(child.name));
    const childType = /\.(\w+)/.exec(row ?? '')?.[1];
    if (childType === undefined) expect(child.text.trim() + child.children.map((inner) => inner.text).join('')).not.toBe('');
    else checkCii(child, childType);
  }
}

// Outside check of order and cardinality; sources stand in the fixtures.
describe.each(documents)('%s', (_name, document) => {
  it('is UBL in the order of the published schema', () => {
    checkUbl(readXml(toUbl(document)));
  });

  it('is CII in the order of the published schema', () => {
    checkCii(readXml(toCii(document)), 'CrossIndustryInvoiceType');
  });

  it('has no amount with more than two decimals in either form (BR-DEC, UBL-DT-01)', () => {
    const amounts = (xml: string): string[] =>
      [...xml.matchAll(/<(?:\w+:)(\w*Amount)(?: [^>]*)?>([^<]+)</g)].flatMap(([, name = '', text = '']) =>
        name === 'PriceAmount' || name === 'ChargeAmount' ? [] : [text],
      );
    for (const xml of [toUbl(document), toCii(document)]) {
      expect(amounts(xml).length).toBeGreaterThan(5);
      for (const amount of amounts(xml)) expect(amount).toMatch(/^-?\d+\.\d{2}$/);
    }
  });

  it('says the same in UBL and CII', () => {
    const ubl = readXml(toUbl(document));
    const cii = readXml(toCii(document));
    const line = document.kind === 'credit-note' ? 'cac:CreditNoteLine' : 'cac:InvoiceLine';
    const settlement = ['rsm:SupplyChainTradeTransaction', 'ram:ApplicableHeaderTradeSettlement'] as const;
    const ciiLine = ['rsm:SupplyChainTradeTransaction', 'ram:IncludedSupplyChainTradeLineItem'] as const;
    const sum = 'ram:SpecifiedTradeSettlementHeaderMonetarySummation';
    const pairs: readonly (readonly [string[], string[]])[] = [
      [texts(ubl, 'cbc:ID'), texts(cii, 'rsm:ExchangedDocument', 'ram:ID')],
      [texts(ubl, 'cac:LegalMonetaryTotal', 'cbc:PayableAmount'), texts(cii, ...settlement, sum, 'ram:DuePayableAmount')],
      [texts(ubl, 'cac:LegalMonetaryTotal', 'cbc:TaxInclusiveAmount'), texts(cii, ...settlement, sum, 'ram:GrandTotalAmount')],
      [texts(ubl, 'cac:LegalMonetaryTotal', 'cbc:PrepaidAmount'), texts(cii, ...settlement, sum, 'ram:TotalPrepaidAmount')],
      [texts(ubl, 'cac:TaxTotal', 'cbc:TaxAmount'), texts(cii, ...settlement, sum, 'ram:TaxTotalAmount')],
      [
        texts(ubl, 'cac:TaxTotal', 'cac:TaxSubtotal', 'cbc:TaxAmount'),
        texts(cii, ...settlement, 'ram:ApplicableTradeTax', 'ram:CalculatedAmount'),
      ],
      [
        texts(ubl, 'cac:TaxTotal', 'cac:TaxSubtotal', 'cac:TaxCategory', 'cbc:Percent'),
        texts(cii, ...settlement, 'ram:ApplicableTradeTax', 'ram:RateApplicablePercent'),
      ],
      [
        texts(ubl, line, 'cbc:LineExtensionAmount'),
        texts(
          cii,
          ...ciiLine,
          'ram:SpecifiedLineTradeSettlement',
          'ram:SpecifiedTradeSettlementLineMonetarySummation',
          'ram:LineTotalAmount',
        ),
      ],
      [texts(ubl, line, 'cac:Item', 'cbc:Name'), texts(cii, ...ciiLine, 'ram:SpecifiedTradeProduct', 'ram:Name')],
      [
        texts(ubl, 'cac:BillingReference', 'cac:InvoiceDocumentReference', 'cbc:ID'),
        texts(cii, ...settlement, 'ram:InvoiceReferencedDocument', 'ram:IssuerAssignedID'),
      ],
    ];
    for (const [inUbl, inCii] of pairs) expect(inCii).toEqual(inUbl);
  });
});

describe('UBL', () => {
  const invoice = readXml(toUbl(plain));

  it('carries the figures of the document', () => {
    expect(texts(invoice, 'cac:LegalMonetaryTotal', 'cbc:PayableAmount')).toEqual([plain.totals.payable]);
    expect(find(invoice, 'cac:LegalMonetaryTotal', 'cbc:PayableAmount')[0]?.attributes).toEqual({ currencyID: 'EUR' });
    expect(texts(invoice, 'cbc:InvoiceTypeCode')).toEqual(['380']);
    expect(texts(invoice, 'cbc:CustomizationID')).toEqual(['urn:cen.eu:en16931:2017']);
    expect(find(invoice, 'cac:InvoiceLine', 'cbc:InvoicedQuantity')[0]?.attributes).toEqual({ unitCode: 'HUR' });
    expect(texts(invoice, 'cac:AdditionalDocumentReference', 'cbc:ID')).toEqual(['TQ 40 KES']);
  });

  it('escapes what people type and keeps it whole', () => {
    expect(texts(invoice, 'cac:AccountingCustomerParty', 'cac:Party', 'cac:PartyLegalEntity', 'cbc:RegistrationName')).toEqual([
      'Odile & Sons <Carriage>',
    ]);
    const pasted = issued({ ...sampleDraft, notes: [{ text: 'bell\u0007 and \ud83d\ude97 and ]]> end' }] });
    expect(texts(readXml(toUbl(pasted)), 'cbc:Note')).toEqual(['bell and \ud83d\ude97 and ]]> end']);
  });

  it('sends one method of payment and leaves the others to the page (UBL-SR-47)', () => {
    expect(texts(invoice, 'cac:PaymentMeans', 'cbc:PaymentMeansCode')).toEqual(['30']);
  });

  it('writes a credit note with positive amounts, the original and its due date with the payment (BR-55)', () => {
    const note = readXml(toUbl(credited()));
    expect(note.name).toBe('CreditNote');
    expect(texts(note, 'cbc:CreditNoteTypeCode')).toEqual(['381']);
    expect(texts(note, 'cbc:DueDate')).toEqual([]);
    expect(texts(note, 'cac:PaymentMeans', 'cbc:PaymentDueDate')).toEqual(['2026-06-30']);
    expect(texts(note, 'cac:BillingReference', 'cac:InvoiceDocumentReference', 'cbc:ID')).toEqual(['2026-0413']);
    expect(Number(texts(note, 'cac:LegalMonetaryTotal', 'cbc:PayableAmount')[0])).toBeGreaterThan(0);
    expect(texts(note, 'cbc:Note')).toEqual(['#ACB#Wrong customer']);
  });

  it('gives category O no rate and shows no VAT number (BR-O-02, BR-O-05)', () => {
    const outside = readXml(toUbl(inCategory('O')));
    const category = ['cac:TaxTotal', 'cac:TaxSubtotal', 'cac:TaxCategory'] as const;
    expect(texts(outside, ...category, 'cbc:ID')).toEqual(['O']);
    expect(texts(outside, ...category, 'cbc:Percent')).toEqual([]);
    expect(texts(outside, ...category, 'cbc:TaxExemptionReasonCode')).toEqual(['VATEX-EU-O']);
    expect(find(outside, 'cac:AccountingSupplierParty', 'cac:Party', 'cac:PartyTaxScheme')).toEqual([]);
  });

  it('gives the ground of a category without VAT and none to one with it (BR-IC-10, BR-S-10)', () => {
    const reason = ['cac:TaxTotal', 'cac:TaxSubtotal', 'cac:TaxCategory', 'cbc:TaxExemptionReason'] as const;
    expect(texts(readXml(toUbl(intraCommunity)), ...reason)).toEqual(['Intra-Community supply']);
    expect(texts(invoice, ...reason)).toEqual([]);
  });

  it('takes another profile', () => {
    const xml = readXml(toUbl(plain, { customizationId: 'urn:x', processId: 'urn:y' }));
    expect([...texts(xml, 'cbc:CustomizationID'), ...texts(xml, 'cbc:ProfileID')]).toEqual(['urn:x', 'urn:y']);
  });

  it('refuses a document without number, date or buyer', () => {
    expect(() => toUbl(composed(sampleDraft))).toThrow('needs a number');
    expect(() => toCii({ ...plain, issueDate: null })).toThrow('needs a number');
  });
});

describe('CII', () => {
  it('writes days as digits with their format, and currency on the VAT total only (CII-DT-031)', () => {
    const xml = readXml(toCii(plain));
    expect(find(xml, 'rsm:ExchangedDocument', 'ram:IssueDateTime', 'udt:DateTimeString')[0]).toMatchObject({
      text: '20260610',
      attributes: { format: '102' },
    });
    const withCurrency = [...toCii(plain).matchAll(/<ram:(\w+) currencyID=/g)].map(([, name]) => name);
    expect(withCurrency).toEqual(['TaxTotalAmount']);
  });

  it('names namespaces of D16B and the core profile', () => {
    const xml = toCii(plain);
    expect(xml).toContain('xmlns:rsm="urn:un:unece:uncefact:data:standard:CrossIndustryInvoice:100"');
    expect(texts(readXml(xml), 'rsm:ExchangedDocumentContext', 'ram:GuidelineSpecifiedDocumentContextParameter', 'ram:ID')).toEqual([
      'urn:cen.eu:en16931:2017',
    ]);
  });
});
