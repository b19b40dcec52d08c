import { compareLogs } from '#libs/warm-up';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { dateTimeText, isoDay, isPast, plainDate } from '../../../web/dates.ts';
import type { FieldView } from '../../../web/form-field.ts';
import { urls } from '../../../web/urls.ts';
import type { KeptLog } from '../keeping/logs.repository.ts';
import { type ComparisonRow, comparisonRows } from '../proof/comparison-rows.ts';
import { logsToDraw, outcomeOf, owedWords, reasonsOf, toldPair } from '../proof/compose-proof.ts';
import { isProven } from '../proof/is-proven.ts';
import { tellLog } from '../proof/told-log.ts';
import { OUTCOME_PEGS, OUTCOME_WORDS, verdictPeg, verdictSaid } from '../proof/verdict-words.ts';
import { sayYardstick, type YardstickSaid } from '../proof/yardstick-words.ts';
import { type DrawnLogs, drawWideAndNarrow } from './draw-wide-and-narrow.ts';
import { settingFields } from './log-form.ts';
import { gaugeFields, type LookView, presentLook } from './present-gauge.ts';
import type { JobRunUp } from './run-up.service.ts';

export interface RunUpJobView {
  title: string;
  head: {
    title: string;
    lead: string;
    rest: string;
    keyTag: { key: string } | undefined;
    actions: { href: string; label: string; main?: boolean }[];
  };
  verdict: { peg: string; word: string; sentences: string[] } | undefined;
  owed: { kind: 'note' | 'stopped'; words: string; late: string } | undefined;
  chart: DrawnLogs;
  hasLogs: boolean;
  columns: string[];
  rows: ComparisonRow[];
  verdicts: { peg: string; word: string; sure: string }[];
  lastVisit: { href: string; words: string } | undefined;
  reasons: { heading: string; words: string[] }[];
  yardstick: YardstickSaid | undefined;
  limits: string[];
  advice: string[];
  cautions: string[];
  logs: { href: string; what: string; file: string; peg: string; word: string; who: string; withdrawn: string }[];
  looks: LookView[];
  drafts: { href: string; words: string }[];
  sheets: { href: string; version: number; when: string; peg: string; word: string }[];
  add: { action: string; fields: Record<string, FieldView>; file: FieldView };
  gauge: { action: string; fields: Record<string, FieldView>; isOpen: boolean };
  errors: FormState['summary'];
}

const ROLE_WORDS = { before: 'Before the repair', after: 'After the repair' } as const;
const HIGH_VOLTAGE =
  'Hybrid or electric: high voltage and cooling loops of its own. Trained people only; a log tells how it behaves, and nothing of its valve.';
const DRIVING = 'Logging on the road is a passenger’s task, or is read out parked.';

export function presentRunUpJob(facts: JobRunUp, { log: form, gauge }: { log: FormState; gauge: FormState }): RunUpJobView {
  const { job, pair, samplesOf, lastVisit, looks, names } = facts;
  const comparison = compareLogs(pair.before?.analysis ?? null, pair.after?.analysis ?? null);
  const speaking = pair.after ?? pair.before;
  const told = [...lastVisitTold(facts), ...toldPair(pair)];
  return {
    title: `Run-up, job ${job.number}`,
    head: headOf(facts),
    verdict: verdictOf(facts),
    owed: owedOf(facts),
    chart: drawWideAndNarrow(logsToDraw(pair, samplesOf), 'run-up'),
    hasLogs: told.length > 0,
    columns: told.map(({ heading }) => heading),
    rows: comparisonRows(told),
    verdicts: told.map(({ verdict, howSure }) => ({ ...verdict, sure: howSure })),
    lastVisit: lastVisit
      ? {
          href: urls.jobRunUp(lastVisit.log.jobId),
          words: `The last visit’s log is of job ${lastVisit.jobNumber}, ${plainDate(lastVisit.log.loggedOn)}.`,
        }
      : undefined,
    reasons: reasonsOf(pair),
    yardstick: speaking?.analysis.yardstick ? sayYardstick(speaking.analysis.yardstick) : undefined,
    limits: speaking ? comparison.limits : [],
    advice: speaking?.analysis.advice ?? [],
    cautions: [...new Set([...(isHybrid(facts) ? [HIGH_VOLTAGE] : []), ...(speaking?.analysis.cautions ?? []), DRIVING])],
    logs: facts.logs.map((log) => rowOf(log, names)),
    looks: looks.map((look) => presentLook(look, names)),
    drafts: facts.drafts.map(({ id, fileName, uploadedAt }) => ({
      href: urls.logDraft(id),
      words: `${fileName === '' ? 'Typed readings' : fileName}, ${dateTimeText(uploadedAt, facts.timeZone)}`,
    })),
    sheets: facts.sheets.map(({ id, version, madeAt, outcome }) => ({
      href: urls.proofSheet(id),
      version,
      when: dateTimeText(madeAt, facts.timeZone),
      peg: OUTCOME_PEGS[outcome],
      word: job.asksProof ? OUTCOME_WORDS[outcome] : 'what was found',
    })),
    add: addForm(facts, form),
    gauge: { action: urls.lookAtGauge(job.id), fields: gaugeFields(gauge, roleNext(facts)), isOpen: gauge.summary.length > 0 },
    errors: [...form.summary, ...gauge.summary],
  };
}

function leadOf({ job, pair }: JobRunUp): string {
  const { before, after } = pair;
  if (isProven(pair)) return 'The repair is proven by its log.';
  if (after) return 'The log after the repair does not prove it.';
  if (!before) return 'No log yet.';
  return job.asksProof ? 'One log from before the repair; the one after it is still to come.' : 'What the log found is below.';
}

/** Its tag hangs on the board while the car is ours. */
const GONE: ReadonlySet<string> = new Set(['keys-out', 'squared', 'fell-through']);

function headOf(facts: JobRunUp): RunUpJobView['head'] {
  const { job, sheets } = facts;
  return {
    title: 'Run-up',
    lead: leadOf(facts),
    rest: `Job ${job.number}, ${job.vehicle.make} ${job.vehicle.model}, ${job.vehicle.registration}.`,
    keyTag: job.keyTag === null || GONE.has(job.stage) ? undefined : { key: String(job.keyTag) },
    actions: [
      { href: urls.card(job.id), label: 'Open the card' },
      ...(sheets.length > 0 ? [{ href: urls.newestProof(job.id), label: 'Proof sheet (PDF)', main: true }] : []),
    ],
  };
}

/** With a log after the repair its outcome; with one before alone what that says. */
function verdictOf({ job, pair }: JobRunUp): RunUpJobView['verdict'] {
  const { before, after } = pair;
  const { peg, headline, sentences } = outcomeOf(job, pair);
  if (after || (before && !job.asksProof)) return { peg, word: headline, sentences };
  if (!before) return undefined;
  const { analysis } = before;
  return { peg: verdictPeg(analysis), word: `Before: ${verdictSaid(analysis)}`, sentences: [analysis.behaviour] };
}

function owedOf({ job, now, timeZone }: JobRunUp): RunUpJobView['owed'] {
  const [debt] = job.debts;
  if (!debt) return undefined;
  const isLate = debt.dueOn !== null && isPast(debt.dueOn, now, timeZone);
  return { kind: isLate ? 'stopped' : 'note', words: owedWords(job), late: isLate ? 'That day is over.' : '' };
}

const isHybrid = ({ job, pair }: JobRunUp): boolean =>
  job.vehicle.thermostatKind === 'hybrid' || (pair.after ?? pair.before)?.thermostatKind === 'hybrid';

/** The last visit stands beside this one, so that a slow change shows. */
function lastVisitTold({ lastVisit }: JobRunUp) {
  if (!lastVisit) return [];
  return [tellLog(lastVisit.log.analysis, { heading: 'Last visit', when: plainDate(lastVisit.log.loggedOn) })];
}

function rowOf(log: KeptLog, names: JobRunUp['names']): RunUpJobView['logs'][number] {
  const { id, role, loggedOn, fileName, sampleCount, analysis, keptById, withdrawal } = log;
  return {
    href: urls.warmUpLog(id),
    what: `${ROLE_WORDS[role]}, ${plainDate(loggedOn)}`,
    file: `${fileName === '' ? 'typed' : fileName}, ${sampleCount} readings`,
    peg: verdictPeg(analysis),
    word: verdictSaid(analysis),
    who: names.get(keptById) ?? '',
    withdrawn: withdrawal ? `doesn’t count: ${withdrawal.why}` : '',
  };
}

/** What the next log most likely is: once the system was opened, one after the repair. */
function roleNext({ job, pair }: JobRunUp): 'before' | 'after' {
  const isOpened = !['spoken-of', 'expected', 'standing'].includes(job.stage);
  return isOpened || pair.before ? 'after' : 'before';
}

function addForm(facts: JobRunUp, form: FormState): RunUpJobView['add'] {
  const { job, logs, lastVisit, now, timeZone } = facts;
  const known = logs.at(-1) ?? lastVisit?.log;
  const role = roleNext(facts);
  const kind = job.vehicle.thermostatKind === 'unknown' ? (known?.thermostatKind ?? '') : job.vehicle.thermostatKind;
  const nominal = (role === 'after' ? job.chosenNominalC : null) ?? known?.nominalOpeningC ?? null;
  const error = form.errors['file'];
  return {
    action: urls.addLog(job.id),
    fields: settingFields(form, {
      thermostatKind: kind,
      nominalOpeningC: nominal === null ? '' : String(nominal),
      role,
      loggedOn: isoDay(now, timeZone),
    }),
    file: {
      id: 'file',
      name: 'file',
      label: 'The logger’s file',
      type: 'file',
      optional: true,
      hint: 'CSV as the logger wrote it, 10 MB and 36,000 rows at most. Columns of places are left out and not kept.',
      ...(error === undefined ? {} : { error }),
    },
  };
}
