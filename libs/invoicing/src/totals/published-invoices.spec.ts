import { describe, expect, it } from '@jest/globals';
import { type PublishedInvoice, publishedInvoices, type PublishedLine } from '../fixtures/published-invoices.fixture.ts';
import { totals, type TotalsAnswer, type TotalsInput, type VatCategory } from '../index.ts';

const amount = (text: string): string => Number(text).toFixed(2);

/** An odd line stands with its published net as its price, since its quantity and price do not make it. */
function lineOf(line: PublishedLine, isOdd: boolean): TotalsInput['lines'][number] {
  const [quantity, unitPrice, baseQuantity, allowances, charges, category, vatRate, net] = line;
  const vatCategory = category as VatCategory;
  if (isOdd) return { quantity: net.startsWith('-') ? '-1' : '1', unitPrice: net.replace('-', ''), vatCategory, vatRate };
  return { quantity, unitPrice, baseQuantity, allowances, charges, vatCategory, vatRate };
}

function recompute(invoice: PublishedInvoice): TotalsAnswer {
  const adjustments = (list: PublishedInvoice['allowances']): NonNullable<TotalsInput['allowances']> =>
    list.map(([sum, category, vatRate]) => ({ amount: sum, vatCategory: category as VatCategory, vatRate }));
  const answer = totals({
    lines: invoice.lines.map((line, index) => lineOf(line, invoice.oddLines.includes(index))),
    allowances: adjustments(invoice.allowances),
    charges: adjustments(invoice.charges),
    prepaid: invoice.prepaid,
  } satisfies TotalsInput);
  if (!answer.ok) throw new Error(JSON.stringify(answer.errors));
  return answer.value;
}

const byKey = (rows: readonly (readonly [string, string, string, string])[]): unknown[] =>
  rows.map(([category, rate, taxable, tax]) => ({ category, rate: Number(rate), taxable: amount(taxable), tax: amount(tax) })).sort(byText);
const byText = (a: unknown, b: unknown): number => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1);

// Outside check: eight invoices published with the CEN validation artefacts (see the fixture for source and licence), read.
describe.each(publishedInvoices.map((invoice) => [invoice.file, invoice] as const))('%s', (_file, invoice) => {
  const sums = recompute(invoice);

  it('has the published net of every line that its quantity and price make', () => {
    for (const [index, line] of invoice.lines.entries()) expect(sums.lines[index]?.net).toBe(amount(line[7]));
  });

  it('has the published sums to the cent', () => {
    expect(sums).toMatchObject({
      lineTotal: amount(invoice.lineTotal),
      taxExclusive: amount(invoice.taxExclusive),
      vatTotal: amount(invoice.vatTotal),
      taxInclusive: amount(invoice.taxInclusive),
      payable: amount(invoice.payable),
    });
  });

  it('has the published VAT table to the cent', () => {
    expect(sums.vat.map((row) => ({ ...row, rate: Number(row.rate) })).sort(byText)).toEqual(byKey(invoice.vat));
  });
});

it('counts lines that can prove their net', () => {
  const all = publishedInvoices.flatMap((invoice) => invoice.lines);
  const odd = publishedInvoices.flatMap((invoice) => invoice.oddLines);
  expect([all.length, odd.length]).toEqual([45, 2]);
});
