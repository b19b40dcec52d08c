import { Decimal, percentOf, toAmount, toDecimal } from '#libs/money';
import { assembleDocument } from '../document/compose-document.ts';
import { type InvoiceDocument, type InvoiceDraft } from '../document/invoice-document.ts';
import { type DraftLine } from '../document/invoice-line.ts';
import { done, type FieldError, type Outcome, refused } from '../outcome.ts';
import { type VatRow } from '../totals/totals-input.ts';
import { vatKeyText, vatKeyWords } from '../totals/vat-key.ts';
import { type CreditLeft, creditLeft } from './credit-left.ts';
import { type CreditNote, type CreditRequest } from './credit-request.ts';
import { creditedLines } from './credited-lines.ts';
import { sharedAdjustments } from './shared-adjustments.ts';
import { isWithin } from './signed.ts';

type CreditParts = Pick<InvoiceDraft, 'lines' | 'allowances' | 'charges'>;

/**
 * The credit note (type 381, positive amounts) for a whole document, for what is left of it, or for parts. It never goes
 * beyond the original on net per category and rate. Its tax is net × rate, never more than what is left; the note that takes
 * the last net of a rate takes the remaining tax, so that the cents close.
 *
 * Source: EN 16931 BR-55 (reference to the original), Directive 2006/112/EC art. 219 (second-hand).
 *
 * @param request original, all earlier credit notes, what to take back and why
 * @returns the note, or what to change with the figures that are still possible
 * @throws InvoicingError `not-a-credit-note` when an earlier document corrects something else
 */
export function creditNote(request: CreditRequest): Outcome<CreditNote> {
  if (request.reason.trim() === '')
    return refused([{ field: 'reason', message: 'The credit note does not say why. Enter what is corrected and why (art. 219).' }]);
  const left = creditLeft(request.original, request.earlier);
  const parts = creditParts(request, left);
  if (!parts.ok) return parts;
  const draft = draftOf(request, parts.value);
  const beyond = checkLimits(assembleDocument(draft).totals.vat, left);
  if (beyond.length > 0) return refused(beyond);
  const document = assembleDocument(draft, (row) => taxOf(row, left));
  const completes = left.rows.every((row) => toDecimal(row.taxable).equals(creditedOf(document, row)));
  return done({
    document: completes ? assembleDocument({ ...draft, rounding: left.rounding }, (row) => taxOf(row, left)) : document,
    completes,
  });
}

function creditParts(request: CreditRequest, left: CreditLeft): Outcome<CreditParts> {
  const { original, earlier, what } = request;
  if (what.kind === 'rest') return earlier.length === 0 ? done(mirrorOf(original)) : restOf(request, left);
  if (what.items.length === 0)
    return refused([{ field: 'items', message: 'Nothing is chosen. Choose at least one line or amount to credit.' }]);
  const lines = creditedLines(request, what.items);
  if (!lines.ok) return lines;
  const shared = sharedAdjustments(lines.value, { original, earlier, left });
  return done({ lines: lines.value, ...shared });
}

function mirrorOf(original: InvoiceDocument): CreditParts {
  return {
    lines: original.lines.map((line) => ({ ...line, corrects: { lineId: line.id, quantity: line.quantity } })),
    allowances: original.allowances,
    charges: original.charges,
  };
}

/** After part credits the rest is one line per rate: only so is it exact to the cent. */
function restOf(request: CreditRequest, left: CreditLeft): Outcome<CreditParts> {
  const open = left.rows.filter((row) => !toDecimal(row.taxable).isZero());
  if (open.length === 0) return refused([{ field: 'what', message: `Nothing of ${request.original.number} is left to credit.` }]);
  const lines: DraftLine[] = open.map((row, index) => ({
    id: String(index + 1),
    kind: 'correction',
    name: `Rest of ${request.original.number}, ${vatKeyWords(row)}`,
    quantity: toDecimal(row.taxable).isNegative() ? '-1' : '1',
    unit: 'C62',
    unitPrice: toAmount(toDecimal(row.taxable).abs()),
    vatCategory: row.category,
    vatRate: row.rate,
  }));
  return done({ lines, allowances: [], charges: [] });
}

function draftOf({ original, reason }: CreditRequest, parts: CreditParts): InvoiceDraft {
  return {
    ...original,
    ...parts,
    kind: 'credit-note',
    number: null,
    issueDate: null,
    // What was agreed on paying the original says nothing about paying back.
    dueDate: undefined,
    paymentTerms: undefined,
    paymentMeans: [],
    remittance: undefined,
    prepayments: [],
    rounding: undefined,
    accounting: undefined,
    notes: [],
    preceding: [{ number: original.number, issueDate: original.issueDate }],
    correctionReason: reason,
  };
}

function checkLimits(rows: readonly VatRow[], left: CreditLeft): FieldError[] {
  return rows.flatMap((row) => {
    const limit = leftOf(row, left)?.taxable ?? '0.00';
    if (isWithin(toDecimal(row.taxable), toDecimal(limit))) return [];
    return [
      {
        field: 'what',
        message: `${vatKeyWords(row)}: ${limit} before tax can still be credited, ${row.taxable} was asked for. Credit less at this rate.`,
      },
    ];
  });
}

function taxOf(row: VatRow, left: CreditLeft): Decimal {
  const limit = leftOf(row, left);
  if (limit === undefined || row.rate === null) return new Decimal(0);
  const taxLeft = toDecimal(limit.tax);
  if (toDecimal(row.taxable).equals(toDecimal(limit.taxable))) return taxLeft;
  const computed = percentOf(row.taxable, row.rate);
  return isWithin(computed, taxLeft) ? computed : taxLeft;
}

function leftOf(row: VatRow, left: CreditLeft): VatRow | undefined {
  return left.rows.find((candidate) => vatKeyText(candidate) === vatKeyText(row));
}

function creditedOf(document: InvoiceDocument, row: VatRow): Decimal {
  return toDecimal(document.totals.vat.find((candidate) => vatKeyText(candidate) === vatKeyText(row))?.taxable ?? '0');
}
