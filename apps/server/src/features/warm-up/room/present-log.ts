import type { FormState } from '../../../platform/pages/form-state.ts';
import { dateTimeText, plainDate } from '../../../web/dates.ts';
import { type FieldView, formFields } from '../../../web/form-field.ts';
import { urls } from '../../../web/urls.ts';
import { type ComparisonRow, comparisonRows } from '../proof/comparison-rows.ts';
import { tellLog } from '../proof/told-log.ts';
import { KIND_WORDS, verdictPeg, verdictSaid } from '../proof/verdict-words.ts';
import { sayYardstick, type YardstickSaid } from '../proof/yardstick-words.ts';
import { type DrawnLogs, drawWideAndNarrow } from './draw-wide-and-narrow.ts';
import { presentUnderstood, type UnderstoodView } from './present-understood.ts';
import type { RunUp } from './run-up.service.ts';

export interface WarmUpLogView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  verdict: { peg: string; word: string };
  behaviour: string;
  chart: DrawnLogs;
  rows: ComparisonRow[];
  reasons: string[];
  yardstick: YardstickSaid | undefined;
  advice: string[];
  cautions: string[];
  facts: { term: string; said: string }[];
  understood: UnderstoodView | undefined;
  cleaned: string[];
  withdrawn: string | undefined;
  withdraw: { action: string; fields: Record<string, FieldView>; isOpen: boolean } | undefined;
  errors: FormState['summary'];
}

type OpenLog = Awaited<ReturnType<RunUp['log']>>;

export function presentWarmUpLog(
  { log, job, samples, names }: OpenLog,
  { form, timeZone }: { form: FormState; timeZone: string },
): WarmUpLogView {
  const { analysis, withdrawal } = log;
  const side = log.role === 'before' ? 'Before' : 'After';
  const label = `${side}, ${plainDate(log.loggedOn)}`;
  const drawn = { label, samples, analysis };
  return {
    title: `Warm-up log, job ${job.number}`,
    head: {
      title: 'Warm-up log',
      lead: `${side} the repair, ${plainDate(log.loggedOn)}.`,
      rest: `Job ${job.number}, ${job.vehicle.make} ${job.vehicle.model}, ${job.vehicle.registration}.`,
      actions: [{ href: urls.jobRunUp(job.id), label: 'To the job’s Run-up', main: true }],
    },
    verdict: { peg: verdictPeg(analysis), word: verdictSaid(analysis) },
    behaviour: analysis.behaviour,
    chart: drawWideAndNarrow(
      { before: log.role === 'before' ? drawn : null, after: log.role === 'after' ? drawn : null, nominalC: log.nominalOpeningC },
      'log',
    ),
    rows: comparisonRows([tellLog(analysis, { heading: side, when: plainDate(log.loggedOn) })]),
    reasons: analysis.reasons,
    yardstick: analysis.yardstick ? sayYardstick(analysis.yardstick) : undefined,
    advice: analysis.advice,
    cautions: analysis.cautions,
    facts: [
      { term: 'Thermostat', said: KIND_WORDS[log.thermostatKind] },
      { term: 'Marked', said: log.nominalOpeningC === null ? 'not given' : `${log.nominalOpeningC} °C` },
      { term: 'Heater', said: { on: 'on', off: 'off', unknown: 'not known' }[log.heater] },
      { term: 'From', said: log.fileName === '' ? 'typed readings' : log.fileName },
      { term: 'Kept by', said: `${names.get(log.keptById) ?? ''}, ${dateTimeText(log.keptAt, timeZone)}` },
    ],
    understood: log.understood ? presentUnderstood(log.understood) : undefined,
    cleaned: analysis.cleaned.dropped.map(({ reason, count }) => `${reason}: ${count}`),
    withdrawn: withdrawal
      ? `Doesn’t count since ${dateTimeText(withdrawal.at, timeZone)} (${names.get(withdrawal.byId) ?? ''}): ${withdrawal.why}`
      : undefined,
    withdraw: withdrawal
      ? undefined
      : {
          action: urls.withdrawLog(log.id),
          isOpen: form.summary.length > 0,
          fields: formFields(form, [
            {
              name: 'why',
              label: 'Why it doesn’t count',
              required: true,
              maxlength: 300,
              hint: 'Another car’s, the wrong day, a loose plug: it stays on record.',
            },
          ]),
        },
    errors: form.summary,
  };
}
