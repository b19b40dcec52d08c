import { assignRows, type RowMatch } from '../candidates/assign-rows.ts';
import { findCandidates } from '../candidates/find-candidates.ts';
import { statementPoints, STATEMENT_DATE_DAYS } from './statement-points.ts';
import { documentEvidence, documentNumbers, statementLineEvidence } from './statement-evidence.ts';
import { type StatementDocument, type StatementLine } from './statement.types.ts';

/** A line laid on a document. */
export interface LaidLine {
  readonly line: StatementLine;
  readonly document: StatementDocument;
  readonly agreement: number;
  readonly isOnlyBest: boolean;
  readonly alternatives: readonly string[];
}

/**
 * Lays statement lines on documents by the best assignment overall, at most one line on a document.
 *
 * @param lines - to be laid
 * @param documents - to be found
 * @param toleranceHundredths - of amounts
 */
export function layLines(
  lines: readonly StatementLine[],
  documents: readonly StatementDocument[],
  { toleranceHundredths }: { readonly toleranceHundredths: number },
): LaidLine[] {
  const references = new Set(documents.flatMap(({ numbers }) => documentNumbers(numbers)));
  const rows = lines.map((line) => statementLineEvidence(line, references));
  const pairs = findCandidates(rows, documents.map(documentEvidence), {
    points: statementPoints,
    tolerances: { hundredths: toleranceHundredths, days: STATEMENT_DATE_DAYS },
    known: { references, parts: new Set() },
    amountAlone: true,
    exactOnly: false,
  });
  const matches = assignRows(pairs, { quantity: lines.map(() => 1), copyKey: lines.map(copyKey) });
  return matches.flatMap((match: RowMatch): LaidLine[] => {
    const line = lines[match.row];
    const document = documents[match.column];
    if (line === undefined || document === undefined) return [];
    const alternatives = match.otherColumns.flatMap((other) => documents[other]?.id ?? []);
    return [{ line, document, agreement: match.agreement, isOnlyBest: match.isOnlyBest, alternatives }];
  });
}

/** Lines that are copies of each other: nothing changes when they change places. */
function copyKey({ number, text, amount, date, kind }: StatementLine): string {
  return JSON.stringify([number, text, amount, date, kind]);
}
