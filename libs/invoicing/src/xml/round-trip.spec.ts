import { describe, expect, it } from '@jest/globals';
import { type Invoice, InvoiceService, invoiceSchema } from '@e-invoice-eu/core';
import { type ReadElement, readXml } from '../fixtures/read-xml.fixture.ts';
import { issued, sampleDraft } from '../fixtures/sample-draft.fixture.ts';
import { creditNote, type InvoiceDocument, type InvoiceDraft, toCii, toUbl, type XmlProfile } from '../index.ts';

/**
 * An outside check of both writers by @e-invoice-eu/core 2.3.4, an independent implementation of EN 16931: our UBL is turned over to
 * its own form of an invoice, which it validates against its schema and writes as UBL and as CII from scratch.
 */
interface Schema {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
}

const rootSchema = (invoiceSchema as unknown as Schema).properties?.['ubl:Invoice'] ?? {};

type Node = string | { [name: string]: Node } | Node[];

/** An element in the library's own form: attributes beside the element as name@attribute, lists where its schema has lists. */
function nodeOf(element: ReadElement, schema: Schema | undefined): Node {
  if (element.children.length === 0) return element.text;
  const node: { [name: string]: Node } = {};
  for (const child of element.children) {
    const name = child.name
      .replace('CreditNoteTypeCode', 'InvoiceTypeCode')
      .replace('CreditNoteLine', 'InvoiceLine')
      .replace('CreditedQuantity', 'InvoicedQuantity');
    const own = schema?.properties?.[name];
    const value = nodeOf(child, own?.type === 'array' ? own.items : own);
    const before = node[name];
    if (own?.type === 'array') node[name] = [...(Array.isArray(before) ? before : []), value];
    else node[name] = value;
    for (const [attribute, text] of Object.entries(child.attributes)) node[`${name}@${attribute}`] = text;
  }
  return node;
}

/** It adds a process where none is given. */
const profile: XmlProfile = { customizationId: 'urn:cen.eu:en16931:2017', processId: 'urn:fdc:peppol.eu:2017:poacc:billing:01:1.0' };
const service = new InvoiceService({ log: () => undefined, warn: () => undefined, error: () => undefined });

async function writtenAgain(document: InvoiceDocument, format: 'UBL' | 'CII'): Promise<string> {
  const invoice = { 'ubl:Invoice': nodeOf(readXml(toUbl(document, profile)), rootSchema) } as unknown as Invoice;
  const xml = await service.generate(invoice, { format, lang: 'en', noWarnings: true });
  return typeof xml === 'string' ? xml : new TextDecoder().decode(xml);
}

/** Every leaf with its path, its attributes and its place among its kind: the fields, one to a line. */
function fieldsOf(element: ReadElement, path = ''): string[] {
  const own = Object.entries(element.attributes).map(([name, text]) => `${path}@${name}=${text}`);
  if (element.children.length === 0) return [...own, `${path}=${element.text.trim()}`];
  const seen = new Map<string, number>();
  return [
    ...own,
    ...element.children.flatMap((child) => {
      const name = child.name.replace(/^\w+:/, '');
      const place = (seen.get(name) ?? 0) + 1;
      seen.set(name, place);
      return fieldsOf(child, `${path}/${name}${place === 1 ? '' : `[${place}]`}`);
    }),
  ];
}

/** What the library is known to leave out of CII or to write in another place, so that it is not compared. */
const KNOWN = [
  /schemaLocation/,
  /AdditionalReferencedDocument/, // the invoiced object (BT-18)
  /IncludedNote/, // it does not split the subject off a note
  /SpecifiedTradeAllowanceCharge.*Amount@currencyID/,
  /SellerTaxRepresentativeTradeParty/,
  /InvoiceReferencedDocument/, // of a credit note
];
const compared = (fields: readonly string[]): string[] => fields.filter((field) => !KNOWN.some((known) => known.test(field))).sort();

/** That library wants an address for delivery on both sides and no price with more than two decimals: the same price for two. */
const draft: InvoiceDraft = {
  ...sampleDraft,
  ...(sampleDraft.buyer && { buyer: { ...sampleDraft.buyer, electronicAddress: { id: 'odile@quill.example', schemeId: 'EM' } } }),
  lines: sampleDraft.lines.map((line) => (line.id === '2' ? { ...line, unitPrice: '63.79', baseQuantity: '2' } : line)),
};
const plain = issued(draft);

function credited(): InvoiceDocument {
  const note = creditNote({ original: plain, earlier: [], what: { kind: 'rest' }, reason: 'Wrong customer' });
  if (!note.ok) throw new Error(JSON.stringify(note.errors));
  return { ...note.value.document, number: 'C-7', issueDate: '2026-06-12' };
}

const outside = issued({
  ...draft,
  lines: draft.lines.map((line) => ({ ...line, vatCategory: 'O', vatRate: null })),
  allowances: [],
  charges: [],
});

describe.each([
  ['an invoice with allowances, charges and money prepaid', plain],
  ['an invoice with a rounding amount', issued({ ...draft, prepayments: [], rounding: '0.01' })],
  ['a credit note', credited()],
  ['a document outside the scope of VAT', outside],
] as const)('%s, written again by another library', (_name, document) => {
  it('is the same UBL, field by field', async () => {
    const again = fieldsOf(readXml(await writtenAgain(document, 'UBL'))).sort();
    expect(again).toEqual(fieldsOf(readXml(toUbl(document, profile))).sort());
    expect(again.length).toBeGreaterThan(80);
  });

  it('is the same CII, field by field, but for what that library leaves out', async () => {
    const again = compared(fieldsOf(readXml(await writtenAgain(document, 'CII'))));
    expect(again).toEqual(compared(fieldsOf(readXml(toCii(document, profile)))));
    expect(again.length).toBeGreaterThan(70);
  });
});
