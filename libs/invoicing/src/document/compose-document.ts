import { type Decimal } from '#libs/money';
import { done, type Outcome, refused } from '../outcome.ts';
import { computeTotals } from '../totals/compute-totals.ts';
import { type VatRow } from '../totals/totals-input.ts';
import { vatCategories } from '../totals/vat-category.ts';
import { checkDraft } from './check-draft.ts';
import { type ExemptionReason, type InvoiceDocument, type InvoiceDraft } from './invoice-document.ts';
import { totalsInputOf } from './totals-input-of.ts';

/**
 * Makes a complete document of a draft: checks it, computes its sums, adds the standard ground of categories that have one
 * ('Reverse charge' for AE).
 *
 * @param draft what the till holds
 * @returns the document, or what to change
 * @example composeDocument(draft) // { ok: true, value: { totals: { payable: '252.53', … }, … } }
 */
export function composeDocument(draft: InvoiceDraft): Outcome<InvoiceDocument> {
  const errors = checkDraft(draft);
  return errors.length > 0 ? refused(errors) : done(assembleDocument(draft));
}

/**
 * The same without the checks, for drafts that were checked; `taxOfRow` replaces the tax of rows and is recorded.
 */
export function assembleDocument(draft: InvoiceDraft, taxOfRow?: (row: VatRow) => Decimal): InvoiceDocument {
  const input = totalsInputOf(draft);
  const totals = computeTotals(input, taxOfRow);
  const plain = taxOfRow === undefined ? totals : computeTotals(input);
  const taxAdjustments = totals.vat.flatMap((row, index) => {
    const computed = plain.vat[index]?.tax ?? row.tax;
    return computed === row.tax ? [] : [{ category: row.category, rate: row.rate, computed, taken: row.tax }];
  });
  return {
    ...draft,
    schemaVersion: 1,
    lines: draft.lines.map((line, index) => ({ ...line, net: totals.lines[index]?.net ?? '0.00' })),
    exemptions: withStandardReasons(draft.exemptions, totals.vat),
    totals,
    taxAdjustments,
  };
}

function withStandardReasons(given: readonly ExemptionReason[], rows: readonly VatRow[]): readonly ExemptionReason[] {
  const added = rows.flatMap((row) => {
    const standard = vatCategories[row.category].standardReason;
    const known = given.some((reason) => reason.category === row.category);
    return standard === null || known ? [] : [{ category: row.category, text: standard.text, code: standard.code }];
  });
  return [...given, ...added];
}
