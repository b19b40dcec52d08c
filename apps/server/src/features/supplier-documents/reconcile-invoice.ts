import { type CreditMatching, type CreditUnit, matchCreditLines, recogniseLine } from '#libs/matching';
import { Decimal } from '#libs/money';
import { toCreditLine } from './reconcile-credits.ts';
import type { EnteredLine, FoundDifference, FoundMatch, Reconciled } from './reconciled.types.ts';

/** What a paper names when it charges no piece. */
const NO_PIECE = new Set(['carriage', 'restocking', 'core-charge', 'payment', 'balance']);

const bare = (part: string): string => part.toUpperCase().replaceAll(/[^\p{L}\p{N}]+/gu, '');

/**
 * Lays the lines of a purchase invoice on the units that were ordered, by the same best assignment as credits: reference, part
 * and price. Another part number is another piece, whatever order it quotes. A price that is not the ordered one is named; a
 * unit that has its invoice line already is charged twice.
 *
 * @param units `charged` is what they were ordered at, `credited` the same once they have their invoice line
 */
export function reconcileInvoice(
  lines: readonly EnteredLine[],
  units: readonly CreditUnit[],
  { documentId }: { documentId: string },
): Reconciled {
  const kinds = new Map(
    lines.flatMap((line) => {
      const kind = recogniseLine(line.text);
      return kind !== undefined && NO_PIECE.has(kind) && line.part === '' ? [[line.id, kind] as const] : [];
    }),
  );
  const pieces = lines.filter(({ id }) => !kinds.has(id));
  const answers = [...new Set(pieces.map(({ part }) => bare(part)))].map((part) =>
    matchCreditLines({
      lines: pieces.filter((line) => bare(line.part) === part).map((line) => ({ ...toCreditLine(line, documentId), kind: 'credit' })),
      units: part === '' ? units : units.filter((unit) => unit.parts.some((own) => bare(own) === part)),
    }),
  );
  const nameOf = new Map(lines.map(({ id, part, text }) => [id, part || text || 'a line']));
  return {
    kinds,
    matches: answers.flatMap(matchesOf),
    differences: answers.flatMap((answer) => differencesOf(answer, (lineId) => nameOf.get(lineId) ?? '')),
  };
}

function matchesOf({ matches, secondLines }: CreditMatching): FoundMatch[] {
  const found = { side: 'charge', fee: '0.00' } as const;
  return [
    ...matches.map(({ lineId, unitId, share, reasons }): FoundMatch => {
      // Pieces of one part on one order change places without a loss.
      const doubts = reasons.filter((reason) => reason !== 'equal-score');
      const certainty = doubts.length === 0 ? 'sure' : 'unsure';
      return { ...found, lineId, target: { unitId }, role: 'whole', certainty, reasons: doubts, share };
    }),
    ...secondLines.map(({ lineId, unitId, share }): FoundMatch => ({
      ...found,
      ...{ lineId, target: { unitId }, role: 'twice', certainty: 'unsure', reasons: [], share },
    })),
  ];
}

function differencesOf({ matches, secondLines, unknown }: CreditMatching, nameOf: (lineId: string) => string): FoundDifference[] {
  const laid = matches.filter(({ reasons }) => reasons.every((reason) => reason === 'equal-score'));
  return [
    ...laid.flatMap(({ lineId, unitId, share, expected }) =>
      priceDifference({ lineId, unitId, share, ordered: expected, name: nameOf(lineId) }),
    ),
    ...secondLines.map(({ lineId, unitId, share }): FoundDifference => ({
      ...{ kind: 'twice', lineId, target: { unitId }, amount: new Decimal(share).abs().toFixed(2), isWithTax: false },
      words: `${nameOf(lineId)} was invoiced once more for a piece that has its invoice.`,
    })),
    ...unknown.map(({ lineId, quantity, net }): FoundDifference => ({
      ...{ kind: 'unknown', lineId, target: null, amount: new Decimal(net).abs().toFixed(2), isWithTax: false },
      words: `${quantity} of ${nameOf(lineId)} invoiced that we did not order.`,
    })),
  ];
}

/** Named where the invoice has another price than the order; a piece that was never priced has none to differ from. */
export function priceDifference({
  lineId,
  unitId,
  share,
  ordered,
  name,
}: Record<'lineId' | 'unitId' | 'share' | 'ordered' | 'name', string>): FoundDifference[] {
  const off = new Decimal(share).minus(ordered);
  if (off.isZero() || new Decimal(ordered).isZero()) return [];
  const amount = off.abs().toFixed(2);
  const words = `${name} was invoiced at ${share}, ${amount} ${off.isNegative() ? 'less' : 'more'} than ordered (${ordered}).`;
  return [{ kind: 'price', lineId, target: { unitId }, amount, isWithTax: false, words }];
}
