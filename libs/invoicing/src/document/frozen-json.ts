import { type DecimalString, toDecimal } from '#libs/money';
import { done, type Outcome, refused } from '../outcome.ts';
import { computeTotals } from '../totals/compute-totals.ts';
import { vatKeyText } from '../totals/vat-key.ts';
import { type InvoiceDocument } from './invoice-document.ts';
import { totalsInputOf } from './totals-input-of.ts';

/**
 * A document as the text that is kept with the issue: keys sorted, so that equal documents are equal texts and can be
 * compared or hashed.
 */
export function freezeDocument(document: InvoiceDocument): string {
  return sortedJson(document);
}

/**
 * Reads a frozen document back and proves its sums again, so that a damaged record is noticed and not printed.
 *
 * @param text what {@link freezeDocument} gave
 */
export function thawDocument(text: string): Outcome<InvoiceDocument> {
  const parsed = parse(text);
  if (parsed === null) return damaged('schemaVersion', 'is no document of version 1');
  return sumsAgree(parsed) ? done(parsed) : damaged('totals', 'has sums that do not agree with its lines');
}

function damaged(field: string, what: string): Outcome<InvoiceDocument> {
  return refused([{ field, message: `This record ${what}. Take it from a backup.` }]);
}

function sortedJson(value: object): string {
  return JSON.stringify(value, (_key, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}

function parse(text: string): InvoiceDocument | null {
  try {
    const value = JSON.parse(text) as Partial<InvoiceDocument> | null;
    const lists = [value?.lines, value?.allowances, value?.charges, value?.prepayments, value?.taxAdjustments];
    return value?.schemaVersion === 1 && lists.every(Array.isArray) && value.totals !== undefined ? (value as InvoiceDocument) : null;
  } catch {
    return null;
  }
}

function sumsAgree(document: InvoiceDocument): boolean {
  const taken = new Map<string, DecimalString>(document.taxAdjustments.map((adjustment) => [vatKeyText(adjustment), adjustment.taken]));
  const again = computeTotals(totalsInputOf(document), (row) => toDecimal(taken.get(vatKeyText(row)) ?? row.tax));
  return sortedJson(again) === sortedJson(document.totals) && document.lines.every((line, index) => line.net === again.lines[index]?.net);
}
