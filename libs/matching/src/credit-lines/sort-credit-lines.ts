import { isNegativeAmount } from '../lines/is-negative-amount.ts';
import { type LineKind } from '../lines/line-words.ts';
import { recogniseLine } from '../lines/recognise-line.ts';
import { type CreditLine } from './credit-matching.types.ts';

export interface SortedLines {
  /** Lines that claim units. */
  readonly credits: readonly CreditLine[];
  readonly others: readonly { readonly line: CreditLine; readonly kind: Exclude<LineKind, 'credit'> }[];
}

/**
 * Tells the lines that credit units from carriage, fees, payments and the like. What a line is said to be goes first; then a
 * part number makes it a credit, unless the words name a core charge; then its words tell; a line that takes money and says nothing is an invoice line.
 *
 * @param lines - of credit notes
 */
export function sortCreditLines(lines: readonly CreditLine[]): SortedLines {
  const sorted = lines.map((line) => ({ line, kind: kindOf(line) }));
  return {
    credits: sorted.filter(({ kind }) => kind === 'credit').map(({ line }) => line),
    others: sorted.flatMap(({ line, kind }) => (kind === 'credit' ? [] : [{ line, kind }])),
  };
}

function kindOf({ kind, part, text, net }: CreditLine): LineKind {
  if (kind !== undefined) return kind;
  const byWords = recogniseLine(text ?? '');
  const takes = isNegativeAmount(net);
  const hasPart = (part ?? '').trim() !== '';
  if (byWords === 'core-charge') return byWords;
  if (hasPart && !takes) return 'credit';
  if (hasPart) return byWords === 'restocking' ? byWords : 'invoice';
  if (byWords === undefined) return takes ? 'invoice' : 'credit';
  return takes && byWords === 'credit' ? 'invoice' : byWords;
}
