import { plainDecimal, toAmount, toDecimal } from '#libs/money';
import { type DraftLine, type InvoiceLine } from '../document/invoice-line.ts';
import { lineInputOf } from '../document/totals-input-of.ts';
import { done, type FieldError, type Outcome, refused } from '../outcome.ts';
import { checkFigure } from '../totals/check-figure.ts';
import { checkTax } from '../totals/check-tax.ts';
import { lineNet } from '../totals/line-net.ts';
import { creditLine } from './credit-line.ts';
import { type CreditItem, type CreditRequest } from './credit-request.ts';
import { lineLeft } from './line-left.ts';
import { isWithin, withSignOf } from './signed.ts';

/** The lines of a part credit, or why an item cannot be credited. */
export function creditedLines(request: CreditRequest, items: readonly CreditItem[]): Outcome<readonly InvoiceLine[]> {
  const lines: InvoiceLine[] = [];
  for (const [index, item] of items.entries()) {
    // Lines already drafted here count as earlier, so the same piece is not taken twice in one note.
    const credited = [...request.earlier, { lines }];
    const drafted = draftItem(item, { index, original: request.original.lines, credited });
    if (!drafted.ok) return drafted;
    lines.push({ ...drafted.value, id: String(index + 1), net: toAmount(lineNet(lineInputOf(drafted.value))) });
  }
  return done(lines);
}

interface ItemContext {
  readonly index: number;
  readonly original: readonly InvoiceLine[];
  readonly credited: readonly { readonly lines: readonly InvoiceLine[] }[];
}

function draftItem(item: CreditItem, context: ItemContext): Outcome<DraftLine> {
  const path = `items[${context.index}]`;
  const what = `Item ${context.index + 1}`;
  if (item.kind === 'free') {
    const errors = [
      ...checkFigure(`${path}.net`, item.net, { what: `${what}: the amount`, places: 2, sign: 'above-zero' }),
      ...checkTax(path, item, { what }),
    ];
    return errors.length > 0 ? refused(errors) : done(freeLine(item));
  }
  const line = context.original.find((candidate) => candidate.id === item.lineId);
  if (line === undefined) return fail(`${path}.lineId`, `${what}: the invoice has no line ${item.lineId}. Choose one of its lines.`);
  return item.kind === 'quantity' ? quantityItem(item, line, context) : amountItem(item, line, context);
}

const fail = (field: string, message: string): { readonly ok: false; readonly errors: readonly FieldError[] } =>
  refused([{ field, message }]);

function quantityItem(item: Extract<CreditItem, { kind: 'quantity' }>, line: InvoiceLine, context: ItemContext): Outcome<DraftLine> {
  const field = `items[${context.index}].quantity`;
  const malformed = checkFigure(field, item.quantity, { what: `Item ${context.index + 1}: the quantity`, sign: 'above-zero' });
  if (malformed.length > 0) return refused(malformed);
  const left = lineLeft(line, context.credited);
  const quantity = withSignOf(toDecimal(item.quantity), toDecimal(line.quantity));
  if (!isWithin(quantity, left.quantity))
    return fail(
      field,
      `"${line.name}": ${plainDecimal(left.quantity.abs())} of it can still be credited, not ${item.quantity}. Lower the quantity.`,
    );
  const credit = creditLine(line, quantity, { closesAt: quantity.equals(left.quantity) ? left.net : null });
  const net = lineNet(lineInputOf(credit));
  if (isWithin(net, left.net)) return done(credit);
  return fail(
    field,
    `"${line.name}": ${toAmount(left.net)} before tax is left of it, ${toAmount(net)} would be credited. Credit all of it or an amount.`,
  );
}

function amountItem(item: Extract<CreditItem, { kind: 'amount' }>, line: InvoiceLine, context: ItemContext): Outcome<DraftLine> {
  const field = `items[${context.index}].net`;
  const malformed = checkFigure(field, item.net, { what: `Item ${context.index + 1}: the amount`, places: 2, sign: 'above-zero' });
  if (malformed.length > 0) return refused(malformed);
  const left = lineLeft(line, context.credited).net;
  if (!isWithin(withSignOf(toDecimal(item.net), toDecimal(line.net)), left))
    return fail(field, `"${line.name}": ${toAmount(left.abs())} before tax can still be credited, not ${item.net}. Lower the amount.`);
  return done({
    ...freeLine({ ...item, vatCategory: line.vatCategory, vatRate: line.vatRate }),
    quantity: toDecimal(line.net).isNegative() ? '-1' : '1',
    corrects: { lineId: line.id, quantity: '0' },
  });
}

function freeLine(item: Omit<Extract<CreditItem, { kind: 'free' }>, 'kind'>): DraftLine {
  return {
    id: '',
    kind: 'correction',
    name: item.words,
    quantity: '1',
    unit: 'C62',
    unitPrice: item.net,
    vatCategory: item.vatCategory,
    vatRate: item.vatRate,
  };
}
