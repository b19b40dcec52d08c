import { matchStatement, type StatementDocument } from '#libs/matching';
import type { EnteredLine, FoundMatch, Reconciled, Target } from './reconciled.types.ts';

/** A document of ours, or a return note that no credit note has come for yet. */
export interface NamedDocument extends StatementDocument {
  target: Exclude<Target, { unitId: string }>;
  /** An earlier statement has named it: this one need not. */
  isSettled: boolean;
}

/** Lays the lines of a statement (totals with tax) on documents. No unit's money moves by it: that is for the credit note itself. */
export function reconcileStatement(lines: readonly EnteredLine[], documents: readonly NamedDocument[]): Reconciled {
  const known = new Set(documents.flatMap(({ numbers }) => numbers.map((number) => number.toLowerCase())));
  const answer = matchStatement({
    lines: lines.map(({ id, number, reference, text, amount, date }) => ({
      id,
      number: number === '' ? reference : number,
      // The number of a paper that we have says more than what that paper refers to.
      text: known.has(number.toLowerCase()) ? text : `${text} ${reference}`,
      amount,
      date,
    })),
    documents: documents.map(({ target: _, isSettled: __, ...document }) => document),
  });
  const targets = new Map(documents.map(({ id, target }) => [id, target]));
  const settled = new Set(documents.filter(({ isSettled }) => isSettled).map(({ id }) => id));
  const amounts = new Map(lines.map(({ id, amount }) => [id, amount.replace('-', '')]));
  const found = (lineId: string, documentId: string, rest: Pick<FoundMatch, 'role' | 'certainty' | 'reasons'>): FoundMatch[] => {
    const target = targets.get(documentId);
    return target ? [{ lineId, target, side: 'statement', share: amounts.get(lineId) ?? '0', fee: '0.00', ...rest }] : [];
  };
  return {
    kinds: new Map(answer.recognised.map(({ lineId, kind }) => [lineId, kind])),
    matches: [
      ...answer.matches.flatMap(({ lineId, documentId, certainty, reasons, alternatives }) => [
        ...found(lineId, documentId, { role: 'whole', certainty, reasons }),
        ...alternatives.flatMap((other) => found(lineId, other, { role: 'whole', certainty: 'unsure', reasons })),
      ]),
      ...answer.secondLines.flatMap(({ lineId, documentId, proposal }) =>
        found(lineId, documentId, { role: proposal, certainty: 'unsure', reasons: [] }),
      ),
    ],
    differences: answer.differences
      .filter(({ kind, documentId }) => !(kind === 'not-credited' && settled.has(documentId ?? '')))
      .map(({ kind, lineId, documentId, amount, words }) => ({
        kind,
        lineId: lineId ?? null,
        target: documentId === undefined ? null : (targets.get(documentId) ?? null),
        amount,
        isWithTax: true,
        words,
      })),
  };
}
