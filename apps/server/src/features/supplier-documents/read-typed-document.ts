import { randomUUID } from 'node:crypto';
import { Decimal, parseAmount, sumAmounts } from '#libs/money';
import type { FieldError } from '../../platform/domain-error.ts';
import { dayColumn } from '../../web/dates.ts';
import type { TypedDocumentDto } from './dto/typed-document.dto.ts';
import type { EnteredLine } from './reconciled.types.ts';
import { unreadable } from './supplier-documents.errors.ts';

type Rows = Pick<TypedDocumentDto, 'reference' | 'part' | 'text' | 'quantity' | 'amount'>;

/**
 * What was typed as lines and a total, or every field that has to change.
 *
 * @throws DomainError beside the fields
 */
export function readTypedDocument({ datedOn, gross, ...rows }: TypedDocumentDto): { lines: EnteredLine[]; gross: string | null } {
  const errors: FieldError[] = [];
  if (dayColumn(datedOn) === undefined) errors.push({ field: 'datedOn', message: 'There is no such day: choose the day on the paper.' });
  const lines = rows.amount.flatMap((_, index) => {
    const read = readRow(rows, index);
    if (read === null) return [];
    errors.push(...read.errors);
    return read.line ? [read.line] : [];
  });
  if (lines.length === 0 && errors.length === 0) errors.push({ field: 'amount.0', message: 'Type at least one line with its amount.' });
  const total = gross === '' ? null : parseAmount(gross);
  if (total?.ok === false) errors.push({ field: 'gross', message: total.message });
  const net = new Decimal(sumAmounts(['0', ...lines.map(({ amount }) => amount)]));
  if (total?.ok === true && new Decimal(total.amount).lessThan(net.minus('0.02')))
    errors.push({ field: 'gross', message: `The lines alone come to ${net.toFixed(2)}: the total with tax is no less.` });
  if (errors.length > 0) throw unreadable(errors);
  return { lines, gross: total?.ok === true ? new Decimal(total.amount).toFixed(2) : null };
}

function readRow(rows: Rows, index: number): { line: EnteredLine | undefined; errors: FieldError[] } | null {
  const [reference, part, text, quantity, amount] = [rows.reference, rows.part, rows.text, rows.quantity, rows.amount].map(
    (column) => column[index] ?? '',
  ) as [string, string, string, string, string];
  if ([reference, part, text, amount].every((cell) => cell === '')) return null;
  const net = parseAmount(amount, { negative: true });
  const pieces = quantity === '' ? 1 : /^\d{1,4}$/.test(quantity) ? Number(quantity) : 0;
  const errors = [
    ...(net.ok ? [] : [{ field: `amount.${index}`, message: `Line ${index + 1}: ${net.message}` }]),
    ...(pieces > 0 ? [] : [{ field: `quantity.${index}`, message: `Line ${index + 1}: give the pieces as a whole number of 1 or more.` }]),
  ];
  if (!net.ok || errors.length > 0) return { line: undefined, errors };
  const line = { id: randomUUID(), position: index + 1, number: '', reference, part, text, quantity: pieces, date: null };
  return { line: { ...line, amount: new Decimal(net.amount).toFixed(2) }, errors };
}
