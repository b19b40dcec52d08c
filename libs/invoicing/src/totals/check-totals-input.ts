import { type FieldError } from '../outcome.ts';
import { checkFigure } from './check-figure.ts';
import { checkTax } from './check-tax.ts';

type Entry = Readonly<Record<string, unknown>>;

const isEntry = (value: unknown): value is Entry => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * What is wrong with figures sent in for totals, each with its field ('lines[0].quantity') and what to change. Empty when
 * they can be computed with.
 *
 * @param input anything, as it came over the border
 */
export function checkTotalsInput(input: unknown): FieldError[] {
  if (!isEntry(input)) return [{ field: '', message: 'The figures are missing. Send an object with "lines".' }];
  const { lines } = input;
  if (!Array.isArray(lines) || lines.length === 0)
    return [{ field: 'lines', message: 'There is no line. Add at least one (BR-16 of EN 16931).' }];
  return [
    ...lines.flatMap((line: unknown, index) => checkLine(line, index)),
    ...checkAdjustments('allowances', input['allowances']),
    ...checkAdjustments('charges', input['charges']),
    ...optional(input, 'prepaid', { what: 'The money already received', places: 2 }),
    ...optional(input, 'rounding', { what: 'The rounding of the sum', places: 2 }),
  ];
}

function checkLine(line: unknown, index: number): FieldError[] {
  const path = `lines[${index}]`;
  const what = `Line ${index + 1}`;
  if (!isEntry(line)) return [{ field: path, message: `${what} is empty. Send quantity, unitPrice, vatCategory and vatRate.` }];
  return [
    ...checkFigure(`${path}.quantity`, line['quantity'], { what: `${what}: the quantity` }),
    ...checkFigure(`${path}.unitPrice`, line['unitPrice'], {
      what: `${what}: the unit price`,
      sign: 'zero-or-more',
      instead: 'Give a discount as an allowance and a return as a negative quantity (BR-27).',
    }),
    ...(line['baseQuantity'] === undefined
      ? []
      : checkFigure(`${path}.baseQuantity`, line['baseQuantity'], { what: `${what}: the units the price is for`, sign: 'above-zero' })),
    ...checkAmounts(`${path}.allowances`, line['allowances'], { what: `${what}: the allowance`, opposite: 'charge' }),
    ...checkAmounts(`${path}.charges`, line['charges'], { what: `${what}: the charge`, opposite: 'allowance' }),
    ...checkTax(path, line, { what }),
  ];
}

function checkAmounts(field: string, amounts: unknown, words: { what: string; opposite: string }): FieldError[] {
  if (amounts === undefined) return [];
  if (!Array.isArray(amounts)) return [{ field, message: `${words.what}s are not a list. Send a list of amounts, such as ["5.00"].` }];
  return amounts.flatMap((amount: unknown, index) =>
    checkFigure(`${field}[${index}]`, amount, {
      what: words.what,
      places: 2,
      sign: 'zero-or-more',
      instead: `Enter it as a ${words.opposite} without the minus.`,
    }),
  );
}

function checkAdjustments(field: 'allowances' | 'charges', adjustments: unknown): FieldError[] {
  if (adjustments === undefined) return [];
  const name = field === 'allowances' ? 'allowance' : 'charge';
  if (!Array.isArray(adjustments)) return [{ field, message: `The ${field} are not a list. Send a list with amount and VAT category.` }];
  return adjustments.flatMap((adjustment: unknown, index) => {
    const path = `${field}[${index}]`;
    const what = `Document ${name} ${index + 1}`;
    if (!isEntry(adjustment)) return [{ field: path, message: `${what} is empty. Send amount, vatCategory and vatRate.` }];
    return [
      ...checkFigure(`${path}.amount`, adjustment['amount'], {
        what: `${what}: the amount`,
        places: 2,
        sign: 'zero-or-more',
        instead: `Enter it as ${field === 'allowances' ? 'a charge' : 'an allowance'} without the minus.`,
      }),
      ...checkTax(path, adjustment, { what }),
    ];
  });
}

function optional(input: Entry, field: 'prepaid' | 'rounding', rule: { what: string; places: number }): FieldError[] {
  return input[field] === undefined ? [] : checkFigure(field, input[field], rule);
}
