import type { FormState } from '../../platform/pages/form-state.ts';
import { rowError } from '../../platform/pages/form-state.ts';
import { dateTimeText, plainDate } from '../../web/dates.ts';
import { moneyText } from '../../web/money-text.ts';
import { returnNoteNumber } from '../../web/return-note-number.ts';
import { urls } from '../../web/urls.ts';
import { type DifferenceView, differenceView } from './difference-view.ts';
import { KIND_WORDS, LINE_KIND_WORDS, REASON_WORDS, ROLE_WORDS } from './document-words.ts';
import type { LineRow } from './documents.repository.ts';
import type { WholeDocument } from './documents.service.ts';
import type { MatchRow } from './matches.repository.ts';
import type { DocumentKind, MatchRole } from './reconciled.types.ts';

interface MatchView {
  verdict: string;
  word: string;
  on: string;
  href: string | undefined;
  share: string;
  note: string;
  accepts: { action: string; role: MatchRole; label: string; isMain: boolean }[];
  end: { action: string; label: string; why: string } | undefined;
}

interface LineView {
  position: number;
  says: string;
  amount: string;
  matches: MatchView[];
  byHand: { action: string; id: string; error: string | undefined } | undefined;
  note: string;
}

export interface PaperView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  withdrawn: string;
  lines: LineView[];
  differences: DifferenceView[];
  withdraw: { action: string; error: string | undefined } | undefined;
  errors: FormState['summary'];
}

export interface PaperContext {
  byHand: FormState;
  withdraw: FormState;
  settle: FormState;
  currency: string;
  timeZone: string;
  names: ReadonlyMap<string, string>;
}

const VERDICTS = { laid: 'fits', proposed: 'inconclusive', ended: 'not-read' } as const;

export function presentPaper(whole: WholeDocument, context: PaperContext): PaperView {
  const { document, lines, matches, differences } = whole;
  const { currency, names } = context;
  const isOpen = document.withdrawn === null;
  const toDecide = new Set(matches.filter(({ state }) => state === 'proposed').map(({ lineId }) => lineId)).size;
  return {
    title: `${KIND_WORDS[document.kind]} ${document.number}`,
    head: {
      title: `${KIND_WORDS[document.kind]} ${document.number}`,
      lead: leadOf(toDecide, isOpen),
      rest: `${document.supplier.name}, ${plainDate(document.datedOn)}, ${moneyText(document.total, currency)}${document.kind === 'statement' ? '' : ' net'}. Entered by ${names.get(document.enteredById) ?? 'somebody'} on ${plainDate(document.enteredAt)}${document.importId === null ? '' : ', from a file'}.`,
      actions: [{ href: urls.papers, label: 'To the papers' }],
    },
    withdrawn: document.withdrawn
      ? `${names.get(document.withdrawn.byId) ?? 'Somebody'} withdrew it on ${plainDate(document.withdrawn.at)}: ${document.withdrawn.why}.`
      : '',
    lines: lines.map((line) =>
      lineView(line, { document, matches: matches.filter(({ lineId }) => lineId === line.id), isOpen, ...context }),
    ),
    differences: differences.map((row) => differenceView(row, { currency, names })),
    withdraw: isOpen ? { action: `${urls.paper(document.id)}/withdraw`, error: context.withdraw.errors['why'] } : undefined,
    errors: [...context.byHand.summary, ...context.withdraw.summary, ...context.settle.summary],
  };
}

function leadOf(toDecide: number, isOpen: boolean): string {
  if (!isOpen) return 'Withdrawn: nothing of it counts.';
  if (toDecide === 0) return 'Nothing is left to decide.';
  return toDecide === 1 ? 'One line waits for your word.' : `${toDecide} lines wait for your word.`;
}

type LineContext = PaperContext & { document: WholeDocument['document']; matches: readonly MatchRow[]; isOpen: boolean };

function lineView(line: LineRow, context: LineContext): LineView {
  const { document, matches, isOpen, byHand, currency } = context;
  const laid = matches.filter(({ state }) => state === 'laid').length;
  const isPiece = line.kind === null || line.kind === 'credit';
  const action = `${urls.paper(document.id)}/lines/${line.id}/match`;
  const canLay = isOpen && document.kind !== 'statement' && isPiece && laid < line.quantity;
  const says = [line.number, line.part, line.text, line.reference].filter((words) => words !== '').join(', ');
  return {
    position: line.position,
    says: `${line.quantity === 1 ? '' : `${line.quantity} × `}${says === '' ? 'nothing but an amount' : says}`,
    amount: moneyText(line.amount, currency),
    matches: matches.map((match) => matchView(match, context)),
    byHand: canLay ? { action, id: `code-${line.id}`, error: rowError(byHand, { action, field: 'code' }) } : undefined,
    note: noteOf(line, matches, document.kind),
  };
}

function noteOf({ kind }: LineRow, matches: readonly MatchRow[], documentKind: DocumentKind): string {
  if (matches.some(({ state }) => state !== 'ended')) return '';
  if (kind !== null) return `Recognised as ${LINE_KIND_WORDS[kind] ?? kind}.`;
  return documentKind === 'statement' ? 'No document of ours answers to it.' : 'No piece of ours answers to it.';
}

function matchView(match: MatchRow, { document, isOpen, currency, timeZone, names }: LineContext): MatchView {
  const { state, role, unit, reasons } = match;
  const who = (id: string | null): string => (id === null ? 'somebody' : (names.get(id) ?? 'somebody'));
  const ended = match.endedAt && `${match.endedWhy ?? ''} (${who(match.endedById)}, ${dateTimeText(match.endedAt, timeZone)})`;
  const decided = match.decidedAt && `${who(match.decidedById)}, ${dateTimeText(match.decidedAt, timeZone)}`;
  const address = `${urls.paper(document.id)}/matches/${match.id}`;
  const doubts = reasons.map((reason) => REASON_WORDS[reason] ?? reason).join(', ');
  return {
    verdict: VERDICTS[state],
    word:
      state === 'laid'
        ? role === 'whole'
          ? 'laid'
          : ROLE_WORDS[role]
        : state === 'proposed'
          ? `perhaps ${ROLE_WORDS[role]}`
          : 'taken back',
    on: targetWords(match),
    href: unit ? urls.unit(unit.id) : match.names ? urls.paper(match.names.id) : undefined,
    share: unit ? moneyText(match.share, currency) : '',
    note: [doubts, ended ?? decided ?? ''].filter((words) => words !== '').join('; '),
    accepts: isOpen && state === 'proposed' ? acceptsOf(match, address) : [],
    end:
      isOpen && state !== 'ended'
        ? { action: `${address}/end`, label: state === 'laid' ? 'Take back' : 'No', why: state === 'laid' ? 'Taken back' : 'Not this one' }
        : undefined,
  };
}

function targetWords({ unit, names, returnNote }: MatchRow): string {
  if (unit) return `${unit.label}, ${unit.what}`;
  if (names) return `${KIND_WORDS[names.kind as DocumentKind]} ${names.number}`;
  return returnNote ? `the credit expected for ${returnNoteNumber(returnNote.number)}` : '';
}

function acceptsOf({ role, unit }: MatchRow, address: string): MatchView['accepts'] {
  const action = `${address}/accept`;
  if (role === 'whole') return [{ action, role, label: 'Yes', isMain: true }];
  const further = { action, role, label: role === 'part' ? 'A further part' : 'Once more: note it', isMain: false };
  return unit ? [{ action, role: 'same', label: 'The same money', isMain: true }, further] : [{ ...further, isMain: true }];
}
