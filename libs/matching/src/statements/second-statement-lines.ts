import { Decimal, toDecimal } from '#libs/money';
import { type LaidLine } from './lay-lines.ts';
import { documentEvidence, documentNumbers, statementLineEvidence } from './statement-evidence.ts';
import { type SecondStatementLine, type StatementDocument, type StatementLine } from './statement.types.ts';

/** A further line on a document, with the line itself. */
export type FurtherLine = SecondStatementLine & { readonly line: StatementLine };

/**
 * Lays the lines that are left on documents that have a line already, where the number is the same and the kind does not
 * contradict: as part of the document where it all stays within its total, as *twice* where not.
 *
 * @param lines - what the assignment left
 * @param laid - what it laid
 * @param tolerance - of amounts, in hundredths
 */
export function secondStatementLines(
  lines: readonly StatementLine[],
  laid: readonly LaidLine[],
  { toleranceHundredths }: { readonly toleranceHundredths: number },
): FurtherLine[] {
  const byNumber = new Map<string, StatementDocument[]>();
  const stated = new Map<string, Decimal>();
  for (const { line, document } of laid) {
    stated.set(document.id, toDecimal(line.amount).abs());
    for (const number of documentNumbers(document.numbers)) byNumber.set(number, [...(byNumber.get(number) ?? []), document]);
  }
  const known = new Set(byNumber.keys());
  return lines.flatMap((line): FurtherLine[] => {
    const { references, kind } = statementLineEvidence(line, known);
    const agreeing = references
      .flatMap((number) => byNumber.get(number) ?? [])
      .filter((document) => kind === null || kind === documentEvidence(document).kind);
    const [document] = agreeing;
    if (document === undefined) return [];
    const sum = (stated.get(document.id) ?? new Decimal(0)).plus(toDecimal(line.amount).abs());
    stated.set(document.id, sum);
    const most = toDecimal(document.total).plus(new Decimal(toleranceHundredths).div(100));
    return [{ lineId: line.id, documentId: document.id, proposal: sum.lessThanOrEqualTo(most) ? 'part' : 'twice', line }];
  });
}
