import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { totals, type TotalsAnswer, vatCategories } from '../index.ts';

const line = { quantity: '1', unitPrice: '100.00', vatCategory: 'S', vatRate: '20' };

function sumsOf(input: unknown): TotalsAnswer {
  const answer = totals(input);
  if (!answer.ok) throw new Error(JSON.stringify(answer.errors));
  return answer.value;
}

describe('sums of a document', () => {
  it('gives every sum with two decimals', () => {
    const sums = sumsOf({
      lines: [
        { quantity: '2.4', unitPrice: '62.00', vatCategory: 'S', vatRate: '20' },
        { quantity: '2.45', unitPrice: '9.80', allowances: ['1.01'], charges: ['0.50'], vatCategory: 'S', vatRate: '20.00' },
      ],
      allowances: [{ amount: '10', vatCategory: 'S', vatRate: '20.0' }],
      charges: [{ amount: '4.32', vatCategory: 'S', vatRate: '20' }],
      prepaid: '50',
      rounding: '-0.01',
    });
    expect(sums).toEqual({
      lines: [{ net: '148.80' }, { net: '23.50' }],
      lineTotal: '172.30',
      allowanceTotal: '10.00',
      chargeTotal: '4.32',
      taxExclusive: '166.62',
      vat: [{ category: 'S', rate: '20', taxable: '166.62', tax: '33.32' }],
      vatTotal: '33.32',
      taxInclusive: '199.94',
      prepaid: '50.00',
      rounding: '-0.01',
      payable: '149.93',
      warnings: [],
    });
  });

  it('rounds VAT once per rate, not per line', () => {
    const cheap = { quantity: '1', unitPrice: '0.02', vatCategory: 'S', vatRate: '20' };
    // Each line alone would carry 0.00 of VAT; together they carry 0.004 × 3 = 0.012.
    expect(sumsOf({ lines: [cheap, cheap, cheap] }).vatTotal).toBe('0.01');
  });

  it('takes rates as numbers: 21, 21.0 and 21.00 are one row', () => {
    const lines = ['21', '21.0', '21.00'].map((vatRate) => ({ ...line, vatRate }));
    expect(sumsOf({ lines }).vat).toEqual([{ category: 'S', rate: '21', taxable: '300.00', tax: '63.00' }]);
  });

  it('keeps the same rate apart in different categories', () => {
    const lines = ['Z', 'E', 'AE', 'K', 'G'].map((vatCategory) => ({ ...line, vatCategory, vatRate: '0.00' }));
    expect(sumsOf({ lines }).vat.map((row) => [row.category, row.rate, row.tax])).toEqual([
      ['Z', '0', '0.00'],
      ['E', '0', '0.00'],
      ['AE', '0', '0.00'],
      ['K', '0', '0.00'],
      ['G', '0', '0.00'],
    ]);
  });

  it('gives category O no rate, whether the rate is left out, null or zero', () => {
    const lines = [{ vatRate: undefined }, { vatRate: null }, { vatRate: '0' }, { vatRate: '0.00' }].map((rate) => ({
      ...line,
      vatCategory: 'O',
      ...rate,
    }));
    expect(sumsOf({ lines }).vat).toEqual([{ category: 'O', rate: null, taxable: '400.00', tax: '0.00' }]);
    expect(sumsOf({ lines }).warnings).toEqual([]);
  });

  it('computes category O beside others, and says that it should stand alone', () => {
    const sums = sumsOf({ lines: [line, { ...line, vatCategory: 'O', vatRate: null }] });
    expect(sums.payable).toBe('220.00');
    expect(sums.warnings).toEqual([expect.stringContaining('BR-O-11')]);
  });

  it('gives an allowance at a rate without lines a row of its own', () => {
    const sums = sumsOf({ lines: [line], allowances: [{ amount: '5.00', vatCategory: 'S', vatRate: '5' }] });
    expect(sums.vat[1]).toEqual({ category: 'S', rate: '5', taxable: '-5.00', tax: '-0.25' });
  });

  it('rounds a half away from zero below zero too', () => {
    expect(sumsOf({ lines: [{ ...line, quantity: '-1', unitPrice: '0.125' }] }).lines).toEqual([{ net: '-0.13' }]);
    expect(sumsOf({ lines: [{ ...line, quantity: '-1', unitPrice: '0.004' }] }).lines).toEqual([{ net: '0.00' }]);
  });

  it('divides by the base quantity without tipping a half', () => {
    expect(sumsOf({ lines: [{ ...line, quantity: '1', unitPrice: '1', baseQuantity: '8' }] }).lineTotal).toBe('0.13');
    expect(sumsOf({ lines: [{ ...line, quantity: '2', unitPrice: '1', baseQuantity: '3' }] }).lineTotal).toBe('0.67');
  });

  it('stays exact at the largest figures it takes', () => {
    const figure = '999999999999.99999999';
    expect(sumsOf({ lines: [{ quantity: figure, unitPrice: figure, vatCategory: 'Z' }] }).lineTotal).toBe('999999999999999999980000.00');
  });
});

describe('what cannot be computed is answered with field and words', () => {
  it.each<[unknown, string, RegExp]>([
    [null, '', /figures are missing/],
    [[], '', /figures are missing/],
    [{}, 'lines', /no line/],
    [{ lines: [] }, 'lines', /BR-16/],
    [{ lines: ['x'] }, 'lines[0]', /Line 1 is empty/],
    [{ lines: [{ ...line, quantity: undefined }] }, 'lines[0].quantity', /Line 1: the quantity is missing/],
    [{ lines: [{ ...line, quantity: 2 }] }, 'lines[0].quantity', /sent as a number, which can lose cents/],
    [{ lines: [{ ...line, quantity: '1,5' }] }, 'lines[0].quantity', /"1,5" is not a number. Write it with a point/],
    [{ lines: [{ ...line, quantity: '1e3' }] }, 'lines[0].quantity', /not a number/],
    [{ lines: [{ ...line, quantity: 'NaN' }] }, 'lines[0].quantity', /not a number/],
    [{ lines: [{ ...line, quantity: {} }] }, 'lines[0].quantity', /not a number/],
    [{ lines: [{ ...line, quantity: '1'.repeat(13) }] }, 'lines[0].quantity', /too many digits/],
    [{ lines: [{ ...line, unitPrice: '-1' }] }, 'lines[0].unitPrice', /below zero.*allowance.*negative quantity/],
    [{ lines: [{ ...line, baseQuantity: '0' }] }, 'lines[0].baseQuantity', /not above zero/],
    [{ lines: [{ ...line, allowances: ['-1'] }] }, 'lines[0].allowances[0]', /Enter it as a charge/],
    [{ lines: [{ ...line, allowances: ['1.005'] }] }, 'lines[0].allowances[0]', /more than 2 decimals/],
    [{ lines: [{ ...line, charges: '1' }] }, 'lines[0].charges', /not a list/],
    [{ lines: [{ ...line, vatCategory: 'X' }] }, 'lines[0].vatCategory', /"X" is not one of S, Z, E, AE, K, G, O/],
    [{ lines: [{ ...line, vatCategory: 'toString' }] }, 'lines[0].vatCategory', /not one of/],
    [{ lines: [{ ...line, vatRate: '0' }] }, 'lines[0].vatRate', /0 in category S/],
    [{ lines: [{ ...line, vatRate: undefined }] }, 'lines[0].vatRate', /is missing/],
    [{ lines: [{ ...line, vatRate: '-5' }] }, 'lines[0].vatRate', /below zero/],
    [{ lines: [{ ...line, vatRate: '2000' }] }, 'lines[0].vatRate', /cannot be above 100/],
    [{ lines: [{ ...line, vatCategory: 'AE', vatRate: '20' }] }, 'lines[0].vatRate', /category AE \(reverse charge\), which has 0/],
    [{ lines: [{ ...line, vatCategory: 'O', vatRate: '20' }] }, 'lines[0].vatRate', /has no rate/],
    [{ lines: [line], allowances: {} }, 'allowances', /not a list/],
    [{ lines: [line], allowances: [{ amount: '-1', vatCategory: 'S', vatRate: '20' }] }, 'allowances[0].amount', /as a charge/],
    [{ lines: [line], charges: [null] }, 'charges[0]', /Document charge 1 is empty/],
    [{ lines: [line], prepaid: '1.234' }, 'prepaid', /more than 2 decimals/],
    [{ lines: [line], rounding: 'x' }, 'rounding', /not a number/],
  ])('%j', (input, field, words) => {
    expect(totals(input)).toEqual({ ok: false, errors: [{ field, message: expect.stringMatching(words) }] });
  });

  it('lists every mistake at once', () => {
    const answer = totals({ lines: [{ quantity: '', unitPrice: 'x' }], prepaid: 'y' });
    expect(answer.ok ? [] : answer.errors.map((error) => error.field)).toEqual([
      'lines[0].quantity',
      'lines[0].unitPrice',
      'lines[0].vatCategory',
      'prepaid',
    ]);
  });

  it('never throws, whatever is sent', () => {
    fc.assert(
      fc.property(fc.anything(), (input) => {
        expect(typeof totals(input).ok).toBe('boolean');
        expect(typeof totals({ lines: [input], allowances: [input], prepaid: input }).ok).toBe('boolean');
      }),
    );
  });
});

/** The same sums in whole numbers, written apart from the library: thousandths × ten-thousandths, rounded by integers. */
function roundHalf(numerator: bigint, denominator: bigint): bigint {
  const magnitude = numerator < 0n ? -numerator : numerator;
  const rounded = (2n * magnitude + denominator) / (2n * denominator);
  return numerator < 0n ? -rounded : rounded;
}
const decimal = (value: bigint, places: number): string => {
  const digits = (value < 0n ? -value : value).toString().padStart(places + 1, '0');
  return `${value < 0n ? '-' : ''}${digits.slice(0, -places)}.${digits.slice(-places)}`;
};

describe('any invoice', () => {
  const taxes = fc.constantFrom<readonly [string, number]>(['S', 5], ['S', 20], ['S', 21], ['Z', 0], ['E', 0], ['AE', 0]);
  const lines = fc.record({
    quantity: fc.bigInt({ min: -99_999n, max: 999_999n }),
    price: fc.bigInt({ min: 0n, max: 99_999_999n }),
    allowance: fc.bigInt({ min: 0n, max: 9_999n }),
    charge: fc.bigInt({ min: 0n, max: 9_999n }),
    tax: taxes,
  });
  const adjustments = fc.record({ amount: fc.bigInt({ min: 0n, max: 99_999n }), tax: taxes });
  const invoices = fc.record({
    lines: fc.array(lines, { minLength: 1, maxLength: 25 }),
    allowances: fc.array(adjustments, { maxLength: 4 }),
    charges: fc.array(adjustments, { maxLength: 4 }),
    prepaid: fc.bigInt({ min: 0n, max: 99_999n }),
  });

  it('has the sums that whole-number arithmetic gives', () => {
    fc.assert(
      fc.property(invoices, (invoice) => {
        const asAdjustment = ({ amount, tax }: (typeof invoice.allowances)[number]): object => ({
          amount: decimal(amount, 2),
          vatCategory: tax[0],
          vatRate: String(tax[1]),
        });
        const sums = sumsOf({
          lines: invoice.lines.map(({ quantity, price, allowance, charge, tax }) => ({
            quantity: decimal(quantity, 3),
            unitPrice: decimal(price, 4),
            allowances: [decimal(allowance, 2)],
            charges: [decimal(charge, 2)],
            vatCategory: tax[0],
            vatRate: String(tax[1]),
          })),
          allowances: invoice.allowances.map(asAdjustment),
          charges: invoice.charges.map(asAdjustment),
          prepaid: decimal(invoice.prepaid, 2),
        });
        const nets = invoice.lines.map((entry) => roundHalf(entry.quantity * entry.price, 100_000n) - entry.allowance + entry.charge);
        const taxable = new Map<string, bigint>();
        const add = (tax: readonly [string, number], cents: bigint): unknown =>
          taxable.set(tax.join(' '), (taxable.get(tax.join(' ')) ?? 0n) + cents);
        for (const [index, entry] of invoice.lines.entries()) add(entry.tax, nets[index] ?? 0n);
        for (const entry of invoice.allowances) add(entry.tax, -entry.amount);
        for (const entry of invoice.charges) add(entry.tax, entry.amount);
        const tax = [...taxable].map(([key, cents]) => roundHalf(cents * BigInt(key.split(' ')[1] ?? '0'), 100n));
        const sum = (list: readonly bigint[]): bigint => list.reduce((all, one) => all + one, 0n);
        expect(sums.lines.map(({ net }) => net)).toEqual(nets.map((net) => decimal(net, 2)));
        expect(sums.vat.map((row) => row.tax)).toEqual(tax.map((cents) => decimal(cents, 2)));
        expect(sums.taxExclusive).toBe(decimal(sum([...taxable.values()]), 2));
        expect(sums.payable).toBe(decimal(sum([...taxable.values()]) + sum(tax) - invoice.prepaid, 2));
      }),
    );
  });

  it('does not depend on the order of its lines', () => {
    const plain = lines.map((entry) => ({
      quantity: decimal(entry.quantity, 3),
      unitPrice: decimal(entry.price, 4),
      vatCategory: entry.tax[0],
      vatRate: String(entry.tax[1]),
    }));
    fc.assert(
      fc.property(fc.array(plain, { minLength: 1, maxLength: 10 }), (entries) => {
        const forwards = sumsOf({ lines: entries });
        const backwards = sumsOf({ lines: [...entries].reverse() });
        expect(backwards.payable).toBe(forwards.payable);
        expect(new Set(backwards.vat.map((row) => JSON.stringify(row)))).toEqual(new Set(forwards.vat.map((row) => JSON.stringify(row))));
      }),
    );
  });
});

it('knows which categories need a ground', () => {
  expect(Object.entries(vatCategories).flatMap(([code, rule]) => (rule.reason === 'needed' ? [code] : []))).toEqual([
    'E',
    'AE',
    'K',
    'G',
    'O',
  ]);
});
