import { plainDate } from '../../web/dates.ts';
import { moneyText } from '../../web/money-text.ts';
import { returnNoteNumber } from '../../web/return-note-number.ts';
import { urls } from '../../web/urls.ts';
import { DIFFERENCE_WORDS, KIND_WORDS } from './document-words.ts';
import type { DifferenceRow } from './matches.repository.ts';
import type { DocumentKind } from './reconciled.types.ts';

export interface DifferenceView {
  word: string;
  supplier: string;
  paper: string;
  paperHref: string;
  about: string;
  aboutHref: string | undefined;
  words: string;
  amount: string;
  found: string;
  settled: string;
  settle: string | undefined;
}

/** A difference as a row: what it is, on which paper, about what, how much. */
export function differenceView(
  row: DifferenceRow,
  { currency, names }: { currency: string; names: ReadonlyMap<string, string> },
): DifferenceView {
  const { document, unit, unitId, returnNote, settled } = row;
  return {
    word: DIFFERENCE_WORDS[row.kind],
    supplier: document.supplier,
    paper: `${KIND_WORDS[document.kind as DocumentKind]} ${document.number}`,
    paperHref: urls.paper(document.id),
    about: unit ?? (returnNote === null ? '' : returnNoteNumber(returnNote)),
    aboutHref: unitId === null ? undefined : urls.unit(unitId),
    words: row.words,
    amount: `${moneyText(row.amount, currency)}${row.isWithTax ? ' with tax' : ''}`,
    found: plainDate(row.foundAt),
    settled: settled === null ? '' : `${settled.why} (${names.get(settled.byId) ?? 'somebody'}, ${plainDate(settled.at)})`,
    settle: settled === null ? `${urls.papers}/differences/${row.id}/settle` : undefined,
  };
}
