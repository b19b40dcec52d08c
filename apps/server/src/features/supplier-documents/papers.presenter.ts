import type { FormState } from '../../platform/pages/form-state.ts';
import { plainDate } from '../../web/dates.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import { type DifferenceView, differenceView } from './difference-view.ts';
import { KIND_WORDS } from './document-words.ts';
import type { DocumentRow } from './documents.repository.ts';
import type { DifferenceRow } from './matches.repository.ts';

interface PaperRow {
  href: string;
  title: string;
  supplier: string;
  dated: string;
  total: string;
  note: string;
}

export interface PapersView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  invoiceHref: string;
  differences: DifferenceView[];
  undecided: PaperRow[];
  papers: PaperRow[];
  errors: FormState['summary'];
}

export function presentPapers(
  {
    undecided,
    recent,
    differences,
  }: { undecided: readonly DocumentRow[]; recent: readonly DocumentRow[]; differences: readonly DifferenceRow[] },
  { settle, currency, names }: { settle: FormState; currency: string; names: ReadonlyMap<string, string> },
): PapersView {
  const lines = undecided.reduce((sum, { toDecide }) => sum + toDecide, 0);
  return {
    title: 'Suppliers’ papers',
    head: {
      title: 'Suppliers’ papers',
      lead: leadOf(differences.length, lines),
      rest: 'Invoices say what was charged, credit notes what came back, a statement whether they agree with us.',
      actions: [
        { href: urls.newPaper('credit-note'), label: 'Type in a credit note', main: true },
        { href: urls.paperFile, label: 'Take in a file' },
      ],
    },
    invoiceHref: urls.newPaper('invoice'),
    differences: differences.map((row) => differenceView(row, { currency, names })),
    undecided: undecided.map((row) => paperRow(row, currency)),
    papers: recent.map((row) => paperRow(row, currency)),
    errors: settle.summary,
  };
}

function leadOf(differences: number, lines: number): string {
  const open =
    differences === 0 ? 'No difference is open' : differences === 1 ? 'One difference is open' : `${differences} differences are open`;
  const waiting = lines === 0 ? '' : lines === 1 ? ', one line waits for your word' : `, ${lines} lines wait for your word`;
  return `${open}${waiting}.`;
}

function paperRow(row: DocumentRow, currency: string): PaperRow {
  const { id, kind, number, supplier, datedOn, total, gross, withdrawn, toDecide } = row;
  return {
    href: urls.paper(id),
    title: `${KIND_WORDS[kind]} ${number}`,
    supplier: supplier.name,
    dated: plainDate(datedOn),
    total:
      kind === 'statement'
        ? moneyText(total, currency)
        : `${moneyText(total, currency)} net${gross === null ? '' : `, ${moneyText(gross, currency)} with tax`}`,
    note: withdrawn ? 'withdrawn' : toDecide === 0 ? '' : toDecide === 1 ? 'one line to decide' : `${toDecide} lines to decide`,
  };
}
