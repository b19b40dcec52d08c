import { toDecimal } from '#libs/money';
import { checkStatement } from './check-statement.ts';
import { layLines } from './lay-lines.ts';
import { secondStatementLines } from './second-statement-lines.ts';
import { statementDifferences } from './statement-differences.ts';
import { statementKind } from './statement-evidence.ts';
import { unsureStatementReasons } from './statement-points.ts';
import { type RecognisedStatementLine, type StatementLine, type StatementMatching, type StatementQuestion } from './statement.types.ts';

const DEFAULT_TOLERANCE = '0.02';
const NEEDS_DOCUMENT: readonly (string | undefined)[] = ['invoice', 'credit', 'payment', undefined];

/**
 * Matches the lines of a supplier's statement (document totals with tax) with our documents: purchase invoices, credit notes,
 * returns that a credit is expected for, payments.
 *
 * Best assignment overall on number, amount, kind and date, at most one line on a document; a further line with the same number
 * is proposed as part or as twice. Invoice and payment lines without a document of ours, carriage, fees and balances are
 * recognised and are not unknown. Equal scores and weak evidence are for a person.
 *
 * @param question - lines (what we owe positive, credits and payments negative), documents (totals 0 or more), tolerance
 * @returns matches and differences; every line is in exactly one of matches, secondLines, recognised, unknown
 * @throws MatchingInputError for amounts, dates or ids that can't be used
 * @example
 * matchStatement({
 *   lines: [{ id: 'L1', number: 'CN-1', text: 'Credit note', amount: '-30.00' }],
 *   documents: [{ id: 'D1', kind: 'credit-note', numbers: ['CN1'], total: '36.00' }],
 * }).differences; // [{ kind: 'short', lineId: 'L1', documentId: 'D1', amount: '6.00', … }]
 */
export function matchStatement(question: StatementQuestion): StatementMatching {
  checkStatement(question);
  const { lines, documents } = question;
  const tolerance = toDecimal(question.amountTolerance ?? DEFAULT_TOLERANCE);
  const context = { toleranceHundredths: Math.floor(tolerance.times(100).toNumber()) };
  const matchable = lines.filter((line) => NEEDS_DOCUMENT.includes(statementKind(line)));
  const laid = layLines(matchable, documents, context);
  const laidIds = new Set(laid.map(({ line }) => line.id));
  const second = secondStatementLines(
    matchable.filter(({ id }) => !laidIds.has(id)),
    laid,
    context,
  );
  const settled = new Set([...laidIds, ...second.map(({ lineId }) => lineId)]);
  const left = lines.filter(({ id }) => !settled.has(id));
  const recognised = left.flatMap(recognisedLine);
  const recognisedIds = new Set(recognised.map(({ lineId }) => lineId));
  const unknown = left.filter(({ id }) => !recognisedIds.has(id));
  const found = new Set(laid.map(({ document }) => document.id));
  const missing = documents.filter(({ id }) => !found.has(id));
  return {
    matches: laid.map(({ line, document, agreement, isOnlyBest, alternatives }) => {
      const reasons = unsureStatementReasons(agreement, isOnlyBest);
      return { lineId: line.id, documentId: document.id, certainty: reasons.length === 0 ? 'sure' : 'unsure', reasons, alternatives };
    }),
    secondLines: second.map(({ lineId, documentId, proposal }) => ({ lineId, documentId, proposal })),
    recognised,
    unknown: unknown.map(({ id }) => id),
    unmatchedDocuments: missing.map(({ id }) => id),
    differences: statementDifferences({ laid, second, unknown, missing, tolerance }),
  };
}

function recognisedLine(line: StatementLine): RecognisedStatementLine[] {
  const kind = statementKind(line);
  return kind === undefined || kind === 'credit' ? [] : [{ lineId: line.id, kind }];
}
