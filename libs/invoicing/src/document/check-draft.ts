import { type FieldError } from '../outcome.ts';
import { checkFigure } from '../totals/check-figure.ts';
import { checkTotalsInput } from '../totals/check-totals-input.ts';
import { vatCategories } from '../totals/vat-category.ts';
import { checkDates } from './check-dates.ts';
import { checkLines } from './check-lines.ts';
import { type InvoiceDraft } from './invoice-document.ts';
import { totalsInputOf } from './totals-input-of.ts';

/**
 * What is wrong with a draft so that it has no sums: figures, dates, codes, lines. What the law wants besides is told by
 * {@link missingContents}.
 */
export function checkDraft(draft: InvoiceDraft): FieldError[] {
  const payments = draft.prepayments.flatMap((payment, index) =>
    checkFigure(`prepayments[${index}].amount`, payment.amount, {
      what: `Payment ${index + 1}: the amount`,
      places: 2,
      sign: 'zero-or-more',
    }),
  );
  // The sums need every payment to be a number.
  const figures = payments.length > 0 ? payments : checkTotalsInput(totalsInputOf(draft)).map(nameAdjustment);
  return [...figures, ...checkDates(draft), ...checkCodes(draft), ...checkLines(draft), ...checkExemptions(draft)];
}

/** In a draft an allowance of a line is an entry with an amount and a reason, so its field has one step more. */
function nameAdjustment(error: FieldError): FieldError {
  return { ...error, field: error.field.replace(/^(lines\[\d+\]\.(?:allowances|charges)\[\d+\])$/, '$1.amount') };
}

function checkCodes(draft: InvoiceDraft): FieldError[] {
  const currency = /^[A-Z]{3}$/.test(draft.currency)
    ? []
    : [{ field: 'currency', message: `"${draft.currency}" is no currency code. Use three capital letters, such as EUR.` }];
  const countries = [
    ['seller.address.countryCode', draft.seller.address.countryCode],
    ['buyer.address.countryCode', draft.buyer?.address.countryCode],
    ['taxRepresentative.address.countryCode', draft.taxRepresentative?.address.countryCode],
    ['deliverTo.countryCode', draft.deliverTo?.countryCode],
  ].flatMap(([field = '', code]) =>
    code === undefined || code === '' || /^[A-Z]{2}$/.test(code)
      ? []
      : [{ field, message: `"${code}" is no country code. Use the two letters of ISO 3166, such as IE.` }],
  );
  const accounting =
    draft.accounting === undefined
      ? []
      : checkFigure('accounting.vatTotal', draft.accounting.vatTotal, { what: 'The VAT in the currency of the tax office', places: 2 });
  return [...currency, ...countries, ...accounting];
}

function checkExemptions(draft: InvoiceDraft): FieldError[] {
  return draft.exemptions.flatMap((reason, index) =>
    vatCategories[reason.category].reason === 'forbidden'
      ? [
          {
            field: `exemptions[${index}]`,
            message: `Category ${reason.category} charges VAT and takes no ground for leaving it out. Remove the ground (BR-S-10, BR-Z-10).`,
          },
        ]
      : [],
  );
}
