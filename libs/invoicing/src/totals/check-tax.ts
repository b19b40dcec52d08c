import { isDecimalString, toDecimal } from '#libs/money';
import { type FieldError } from '../outcome.ts';
import { checkFigure } from './check-figure.ts';
import { isVatCategory, vatCategories } from './vat-category.ts';

export interface TaxFields {
  readonly vatCategory?: unknown;
  readonly vatRate?: unknown;
}

/**
 * Checks a VAT category and its rate: above zero for S (BR-S-05 to 07), zero for Z, E, AE, K and G, none for O (BR-O-05 to
 * 07). Where the category fixes the rate it may be left out.
 *
 * @param path field prefix such as 'lines[0]'
 * @param fields what was entered
 * @param options `what` names the line in the message
 */
export function checkTax(path: string, fields: TaxFields, options: { what: string }): FieldError[] {
  const category = fields.vatCategory;
  if (!isVatCategory(category)) {
    const shown = typeof category === 'string' ? ` "${category.slice(0, 20)}"` : '';
    return [
      {
        field: `${path}.vatCategory`,
        message: `${options.what}: the VAT category${shown} is not one of ${Object.keys(vatCategories).join(', ')}. Choose one of them.`,
      },
    ];
  }
  const field = `${path}.vatRate`;
  const rate = fields.vatRate;
  const kind = vatCategories[category].rate;
  const leftOut = rate === undefined || rate === null || rate === '';
  if (leftOut && kind !== 'above-zero') return [];
  const what = `${options.what}: the VAT rate`;
  const malformed = checkFigure(field, rate, { what, sign: 'zero-or-more' });
  if (malformed.length > 0 || !isDecimalString(rate)) return malformed;
  return wrongFor(category, rate).map((message) => ({ field, message: `${what} ${message}` }));
}

function wrongFor(category: keyof typeof vatCategories, rate: string): string[] {
  const exact = toDecimal(rate);
  const { rate: kind, words } = vatCategories[category];
  if (kind === 'above-zero' && exact.isZero()) return ['is 0 in category S. Enter the rate, or choose Z (zero rate) or E (exempt).'];
  if (kind === 'zero' && !exact.isZero()) return [`is ${rate} in category ${category} (${words}), which has 0. Set it to 0 or choose S.`];
  if (kind === 'none' && !exact.isZero()) return [`is ${rate} in category O (${words}), which has no rate. Leave it out or choose S.`];
  if (exact.gt(100)) return [`is ${rate} %. Check it: it cannot be above 100.`];
  return [];
}
