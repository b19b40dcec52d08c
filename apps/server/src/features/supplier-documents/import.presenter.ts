import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import { COLUMN_FIELDS, type ColumnField } from './csv/file-reading.types.ts';
import { DIFFERENCE_WORDS, KIND_WORDS } from './document-words.ts';
import { SEPARATOR_NAMES } from './dto/import.dto.ts';
import type { Preview } from './imports.service.ts';

const SHOWN_LINES = 30;
const SHOWN_BAD = 50;

export interface ImportView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  isTakenIn: boolean;
  documents: { href: string; title: string }[];
  problem: string | undefined;
  reading: { action: string; fields: Record<string, FieldView>; columns: Record<string, FieldView> };
  bad: { line: number; message: string }[];
  badWords: string;
  lines: { line: number; cells: string[] }[];
  moreLines: string;
  papers: { title: string; words: string; differences: string[] }[];
  commit: { action: string; label: string } | undefined;
  errors: FormState['summary'];
}

const ENCODING_OPTIONS = [
  { value: 'utf-8', label: 'UTF-8' },
  { value: 'windows-1252', label: 'Western Europe (Windows-1252)' },
  { value: 'utf-16le', label: 'UTF-16, low byte first' },
  { value: 'utf-16be', label: 'UTF-16, high byte first' },
];
const FIELD_WORDS: Readonly<Record<ColumnField, string>> = {
  number: 'Number of the document',
  date: 'Date',
  reference: 'Our reference',
  part: 'Part number',
  text: 'What it says',
  quantity: 'Pieces',
  amount: 'Amount',
  debit: 'What we owe',
  credit: 'What we get',
};

export function presentImport(preview: Preview, { form, currency }: { form: FormState; currency: string }): ImportView {
  const { row, read, papers, documents } = preview;
  const isTakenIn = row.committedAt !== null;
  return {
    title: row.fileName,
    head: {
      title: 'Take in a file',
      lead: isTakenIn
        ? `${row.fileName} is taken in.`
        : `${row.fileName}: ${countWords(read.lines.length, 'line')} can be read${read.bad.length === 0 ? '' : `, ${read.bad.length} can’t`}.`,
      rest: isTakenIn
        ? 'The same file again leads here and changes nothing.'
        : `${row.supplier.name}. Nothing is written before you say so.`,
      actions: [{ href: urls.papers, label: 'To the papers' }],
    },
    isTakenIn,
    documents: documents.map(({ id, kind, number }) => ({ href: urls.paper(id), title: `${KIND_WORDS[kind]} ${number}` })),
    problem: read.problem,
    reading: readingForm(preview, form),
    bad: read.bad.slice(0, SHOWN_BAD),
    badWords: read.bad.length === 0 ? '' : `${countWords(read.bad.length, 'line')} can’t be read and would be left out`,
    lines: read.lines.slice(0, SHOWN_LINES).map(({ position, number, date, reference, part, text, quantity, amount }) => ({
      line: position,
      cells: [number, date ?? '', reference, part, text, String(quantity), moneyText(amount, currency)],
    })),
    moreLines: read.lines.length > SHOWN_LINES ? `and ${read.lines.length - SHOWN_LINES} more` : '',
    papers: papers.map((paper) => paperView(paper)),
    commit:
      isTakenIn || read.lines.length === 0
        ? undefined
        : {
            action: `${urls.importedFile(row.id)}/commit`,
            label: `Take in ${countWords(read.lines.length, 'line')}${read.bad.length === 0 ? '' : `, leave ${read.bad.length} out`}`,
          },
    errors: form.summary,
  };
}

const countWords = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

function paperView({ paper, isTaken, found }: Preview['papers'][number]): ImportView['papers'][number] {
  const title = `${KIND_WORDS[paper.kind]} ${paper.number}`;
  if (isTaken || !found) return { title, words: 'is on record already and is passed over', differences: [] };
  const sure = found.matches.filter(({ certainty }) => certainty === 'sure').length;
  const asked = new Set(found.matches.filter(({ certainty }) => certainty === 'unsure').map(({ lineId }) => lineId)).size;
  const recognised = found.kinds.size;
  const words = [
    countWords(paper.lines.length, 'line'),
    `${sure} sure`,
    ...(asked === 0 ? [] : [`${asked} to decide`]),
    ...(recognised === 0 ? [] : [`${recognised} recognised as something else`]),
  ].join(', ');
  return { title, words, differences: found.differences.map(({ kind, words: said }) => `${DIFFERENCE_WORDS[kind]}: ${said}`) };
}

function readingForm({ row, read }: Preview, form: FormState): ImportView['reading'] {
  const { encoding, separator, decimalMark, dayOrder, headLine, columns } = row.reading;
  const choices = [
    { value: '', label: 'none' },
    ...read.head.map((name, index) => ({ value: String(index), label: `${index + 1}: ${name}` })),
  ];
  return {
    action: `${urls.importedFile(row.id)}/reading`,
    fields: formFields(form, [
      { name: 'encoding', label: 'Letters', value: encoding, options: ENCODING_OPTIONS },
      {
        name: 'separator',
        label: 'Columns parted by',
        value: Object.entries(SEPARATOR_NAMES).find(([, sign]) => sign === separator)?.[0] ?? 'comma',
        options: Object.keys(SEPARATOR_NAMES).map((name) => ({ value: name, label: name })),
      },
      {
        name: 'decimalMark',
        label: 'Decimals begin with',
        value: decimalMark,
        options: [
          { value: '.', label: 'a point, 1,234.50' },
          { value: ',', label: 'a comma, 1.234,50' },
        ],
      },
      {
        name: 'dayOrder',
        label: 'Dates',
        value: dayOrder,
        options: [
          { value: 'dmy', label: 'day, month, year' },
          { value: 'mdy', label: 'month, day, year' },
          { value: 'ymd', label: 'year, month, day' },
        ],
      },
      {
        name: 'headLine',
        label: 'Line with the names',
        value: String(headLine),
        inputmode: 'numeric',
        maxlength: 4,
        hint: '0 where there is none.',
      },
    ]),
    columns: formFields(
      form,
      COLUMN_FIELDS.map((field) => ({ name: field, label: FIELD_WORDS[field], value: String(columns[field] ?? ''), options: choices })),
    ),
  };
}
