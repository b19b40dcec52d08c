import { type DecimalString, toDecimal } from '#libs/money';
import { type Evidence } from '../candidates/evidence.types.ts';
import { normaliseReference, referencesInText } from '../candidates/normalise-reference.ts';
import { dayNumber } from '../lines/day-number.ts';
import { isNegativeAmount } from '../lines/is-negative-amount.ts';
import { type LineKind } from '../lines/line-words.ts';
import { recogniseLine } from '../lines/recognise-line.ts';
import { type StatementDocument, type StatementLine } from './statement.types.ts';

/**
 * What a line is: as it is said, by its words, or by its sign. A negative amount without words is undefined: credit or payment.
 *
 * @example statementKind({ id: 'L1', amount: '36.00' }) // 'invoice'
 */
export function statementKind({ kind, text, amount }: StatementLine): LineKind | undefined {
  return kind ?? recogniseLine(text ?? '') ?? (isNegativeAmount(amount) ? undefined : 'invoice');
}

/**
 * What a statement line can be matched by. Words of its text count only where they are numbers that exist.
 *
 * @param line - of the statement
 * @param known - every number the documents have
 */
export function statementLineEvidence(line: StatementLine, known: ReadonlySet<string>): Evidence {
  const number = normaliseReference(line.number ?? '');
  const words = referencesInText(line.text ?? '').filter((word) => known.has(word));
  return {
    references: number === '' ? words : [number, ...words],
    parts: [],
    hundredths: hundredthsOf(line.amount),
    day: dayOf(line.date),
    kind: statementKind(line) ?? null,
  };
}

/** What a document can be matched by. */
export function documentEvidence({ kind, numbers, total, date }: StatementDocument): Evidence {
  return {
    references: documentNumbers(numbers),
    parts: [],
    hundredths: hundredthsOf(total),
    day: dayOf(date),
    kind: kind === 'expected-credit' || kind === 'credit-note' ? 'credit' : kind,
  };
}

/** The numbers of a document as they are compared. */
export function documentNumbers(numbers: readonly string[]): string[] {
  return numbers.map(normaliseReference).filter((number) => number !== '');
}

/** For comparing only; money is never computed from it. */
function hundredthsOf(amount: DecimalString): number {
  return Math.round(toDecimal(amount).abs().times(100).toNumber());
}

function dayOf(date: string | null | undefined): number | null {
  return date === null || date === undefined ? null : dayNumber(date);
}
