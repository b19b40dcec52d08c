import type { Ask } from '#libs/warm-up';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { plainDate } from '../../../web/dates.ts';
import { type FieldView, formFields } from '../../../web/form-field.ts';
import { urls } from '../../../web/urls.ts';
import { tellLog } from '../proof/told-log.ts';
import { type ComparisonRow, comparisonRows } from '../proof/comparison-rows.ts';
import { verdictPeg, verdictSaid } from '../proof/verdict-words.ts';
import { type DrawnLogs, drawWideAndNarrow } from '../room/draw-wide-and-narrow.ts';
import { settingFields, valuesOf } from '../room/log-form.ts';
import { presentUnderstood, type UnderstoodView } from '../room/present-understood.ts';
import { ANSWER_FIELDS, type AnswerField, fieldOfAsk } from './answer-fields.ts';
import type { OpenDraft } from './drafts.service.ts';

interface AskView {
  words: string;
  suggestion: string;
  href: string;
}

export interface DraftView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  /** Without these answers the log can't be judged. */
  asks: AskView[];
  /** These would add something. */
  open: AskView[];
  understood: UnderstoodView | undefined;
  chart: DrawnLogs | undefined;
  verdict: { peg: string; word: string } | undefined;
  behaviour: string;
  rows: ComparisonRow[];
  reasons: string[];
  form: {
    action: string;
    fields: Record<string, FieldView>;
    isTyped: boolean;
    answers: { word: string; column: FieldView; unit: FieldView }[];
    rowInterval: FieldView | undefined;
  };
  discard: string;
  errors: FormState['summary'];
}

export function presentDraft({ draft, job, reading, asTheFileSays, analysis }: OpenDraft, form: FormState): DraftView {
  const { setting } = draft;
  const side = setting.role === 'before' ? 'Before' : 'After';
  const when = plainDate(new Date(`${setting.loggedOn}T00:00:00Z`));
  const asks = reading.ok ? [] : reading.asks;
  const drawn = reading.ok && analysis ? { label: `${side}, ${when}`, samples: reading.samples, analysis } : undefined;
  const values = draft.source === 'typed' ? { ...valuesOf(setting), readings: draft.text } : valuesOf(setting);
  return {
    title: `A log for job ${job.number}`,
    head: {
      title: 'Run-up',
      lead: reading.ok ? 'Look over what was understood, then keep it.' : `${reading.problem} It is not kept yet.`,
      rest: `${draft.fileName === '' ? 'Typed readings' : draft.fileName}, for job ${job.number}, ${job.vehicle.make} ${job.vehicle.model}, ${job.vehicle.registration}.`,
      actions: [{ href: urls.jobRunUp(job.id), label: 'To the job’s Run-up' }],
    },
    asks: asks.map(presentAsk),
    open: reading.ok ? (reading.understood?.open ?? []).map(presentAsk) : [],
    understood: reading.understood ? presentUnderstood(reading.understood) : undefined,
    chart: drawn
      ? drawWideAndNarrow(
          {
            before: setting.role === 'before' ? drawn : null,
            after: setting.role === 'after' ? drawn : null,
            nominalC: setting.nominalOpeningC,
          },
          'draft',
        )
      : undefined,
    verdict: analysis ? { peg: verdictPeg(analysis), word: verdictSaid(analysis) } : undefined,
    behaviour: analysis?.behaviour ?? '',
    rows: analysis ? comparisonRows([tellLog(analysis, { heading: side, when })]) : [],
    reasons: analysis?.reasons ?? [],
    form: {
      action: urls.logDraft(draft.id),
      fields: settingFields(form, values),
      isTyped: draft.source === 'typed',
      answers: draft.source === 'file' ? ANSWER_FIELDS.map((field) => answerRow(field, { form, draft, reading, asTheFileSays })) : [],
      rowInterval: draft.source === 'file' ? rowInterval(form, draft) : undefined,
    },
    discard: urls.discardDraft(draft.id),
    errors: form.summary,
  };
}

const presentAsk = ({ field, question, suggestion }: Ask): AskView => ({
  words: question,
  suggestion: suggestion ? `${suggestion.answer} would make sense: ${suggestion.because}. Say so if it is right.` : '',
  href: `#${fieldOfAsk(field)}`,
});

type Answered = Pick<OpenDraft, 'draft' | 'reading' | 'asTheFileSays'> & { form: FormState };

/** Which column and which unit: as the file says, or as somebody says. */
function answerRow({ quantity, word, column, unit, units }: AnswerField, facts: Answered): DraftView['form']['answers'][number] {
  const { form, draft, asTheFileSays } = facts;
  const { answers } = draft.setting;
  const found = asTheFileSays.understood?.columns.find((one) => one.quantity === quantity);
  const [columnField, unitField] = [
    {
      name: column,
      label: `${word}: column`,
      value: String(answers.columns?.[quantity] ?? ''),
      options: [
        { value: '', label: found ? `As recognised: ${found.header}` : 'None recognised' },
        ...headersOf(facts).map((header) => ({ value: header, label: header })),
      ],
    },
    {
      name: unit,
      label: `${word}: unit`,
      value: answers.units?.[quantity] ?? '',
      options: [
        { value: '', label: found?.unit ? `As the file says: ${found.unit}` : 'The file does not say' },
        ...units.map((one) => ({ value: one, label: one })),
      ],
    },
  ];
  const fields = formFields(form, [columnField, unitField]);
  return { word, column: fields[column] as FieldView, unit: fields[unit] as FieldView };
}

function headersOf({ reading, asTheFileSays }: Answered): string[] {
  const said = [reading, asTheFileSays].flatMap(({ understood }) => [
    ...(understood?.columns.map(({ header }) => header) ?? []),
    ...(understood?.ignoredColumns ?? []),
  ]);
  const asked = reading.ok ? [] : reading.asks.filter(({ field }) => field.startsWith('columns.')).flatMap(({ options }) => options);
  return [...new Set([...said, ...asked])].filter((header) => header !== '' && header !== 'row number').slice(0, 200);
}

function rowInterval(form: FormState, { setting }: OpenDraft['draft']): FieldView | undefined {
  const { rowIntervalS } = setting.answers;
  return formFields(form, [
    {
      name: 'rowIntervalS',
      label: 'Seconds from row to row',
      value: rowIntervalS === undefined ? '' : String(rowIntervalS),
      unit: 's',
      inputmode: 'decimal',
      optional: true,
      short: true,
      maxlength: 9,
      hint: 'Only where no column tells the time.',
    },
  ])['rowIntervalS'];
}
