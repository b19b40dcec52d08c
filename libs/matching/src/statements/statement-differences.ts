import { type Decimal, toAmount, toDecimal } from '#libs/money';
import { type LaidLine } from './lay-lines.ts';
import { type SecondStatementLine, type StatementDifference, type StatementDocument, type StatementLine } from './statement.types.ts';

/** What was matched and what was not. */
export interface StatementOutcome {
  readonly laid: readonly LaidLine[];
  readonly second: readonly (SecondStatementLine & { readonly line: StatementLine })[];
  readonly unknown: readonly StatementLine[];
  readonly missing: readonly StatementDocument[];
  readonly tolerance: Decimal;
}

/**
 * Names what a statement and our documents disagree about: amounts short or over, lines twice or unknown, credits that the
 * statement doesn't speak of.
 *
 * @param outcome - lines laid and left, documents missing, tolerance of amounts
 */
export function statementDifferences({ laid, second, unknown, missing, tolerance }: StatementOutcome): StatementDifference[] {
  return [
    ...laid.flatMap((each) => amountDifference(each, tolerance)),
    ...second
      .filter(({ proposal }) => proposal === 'twice')
      .map(({ lineId, documentId, line }): StatementDifference => {
        const amount = absolute(line.amount);
        return { kind: 'twice', lineId, documentId, amount, words: `${amount} stands on the statement once more for the same document.` };
      }),
    ...unknown.map(({ id, amount }): StatementDifference => {
      const figure = absolute(amount);
      return { kind: 'unknown', lineId: id, amount: figure, words: `A credit of ${figure} that no document of ours answers to.` };
    }),
    ...missing
      .filter(({ kind, total }) => (kind === 'credit-note' || kind === 'expected-credit') && toDecimal(total).greaterThan(tolerance))
      .map(({ id, total }): StatementDifference => {
        const amount = absolute(total);
        return { kind: 'not-credited', documentId: id, amount, words: `${amount} is not on the statement.` };
      }),
  ];
}

function amountDifference({ line, document }: LaidLine, tolerance: Decimal): StatementDifference[] {
  const off = toDecimal(line.amount).abs().minus(toDecimal(document.total));
  if (off.abs().lessThanOrEqualTo(tolerance)) return [];
  const amount = toAmount(off.abs());
  const kind = off.lessThan(0) ? 'short' : 'over';
  const way = kind === 'short' ? 'less' : 'more';
  const words = `The statement says ${absolute(line.amount)}, ${amount} ${way} than our ${toAmount(document.total)}.`;
  return [{ kind, lineId: line.id, documentId: document.id, amount, words }];
}

function absolute(amount: string): string {
  return toAmount(toDecimal(amount).abs());
}
