import { type CreditUnit, matchCreditLines } from '#libs/matching';
import type { EnteredLine, FoundMatch, Reconciled } from './reconciled.types.ts';

const AMOUNT_KINDS = new Set(['short', 'over', 'restocking-beyond-terms']);

export const toCreditLine = (line: EnteredLine, documentId: string): Parameters<typeof matchCreditLines>[0]['lines'][number] => ({
  id: line.id,
  documentId,
  reference: line.reference,
  part: line.part,
  text: line.text,
  quantity: line.quantity,
  net: line.amount,
  date: line.date,
});

/**
 * Lays the lines of a credit note on the units that money is due for. A difference of a match that a person has yet to accept is
 * none yet; what is missing is for the statement to say, not for a single credit note.
 */
export function reconcileCredits(
  lines: readonly EnteredLine[],
  units: readonly CreditUnit[],
  { documentId, today }: { documentId: string; today: string },
): Reconciled {
  const answer = matchCreditLines({ lines: lines.map((line) => toCreditLine(line, documentId)), units, asOf: today });
  const laid = new Set(answer.matches.map(({ lineId, unitId }) => `${lineId} ${unitId}`));
  const open = new Set(answer.unmatchedUnits);
  const unsure = new Set(
    answer.matches.filter(({ certainty }) => certainty === 'unsure').map(({ lineId, unitId }) => `${lineId} ${unitId}`),
  );
  return {
    kinds: new Map(answer.recognised.map(({ lineId, kind }) => [lineId, kind])),
    matches: [
      ...answer.matches.flatMap((match): FoundMatch[] => {
        const found = { lineId: match.lineId, side: 'credit', role: 'whole', share: match.share, fee: match.fee } as const;
        const itself = { ...found, target: { unitId: match.unitId }, certainty: match.certainty, reasons: match.reasons };
        const others = match.alternatives.filter((unitId) => open.has(unitId) && !laid.has(`${match.lineId} ${unitId}`));
        for (const unitId of others) laid.add(`${match.lineId} ${unitId}`);
        return [itself, ...others.map((unitId) => ({ ...itself, target: { unitId }, certainty: 'unsure' as const }))];
      }),
      ...answer.secondLines.map(({ lineId, unitId, share, proposal }): FoundMatch => ({
        lineId,
        target: { unitId },
        side: 'credit',
        role: proposal,
        certainty: 'unsure',
        reasons: [],
        share,
        fee: '0.00',
      })),
    ],
    differences: answer.differences.flatMap(({ kind, lineId, unitId, amount, words }) => {
      if (kind === 'not-credited' || (AMOUNT_KINDS.has(kind) && unsure.has(`${lineId} ${unitId}`))) return [];
      return [{ kind, lineId: lineId ?? null, target: unitId === undefined ? null : { unitId }, amount, isWithTax: false, words }];
    }),
  };
}
