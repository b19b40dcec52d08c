import { isPast, plainDate } from '../../../web/dates.ts';
import { urls } from '../../../web/urls.ts';
import type { Outcome } from '#libs/warm-up';
import type { RunUpJobRow } from '../keeping/run-up-jobs.repository.ts';
import { OUTCOME_PEGS, OUTCOME_WORDS } from '../proof/verdict-words.ts';

interface Row {
  href: string;
  key: string;
  number: number;
  car: string;
  logs: string;
  proof: { peg: string; word: string };
  due: string;
  isLate: boolean;
}

export interface RunUpHomeView {
  title: string;
  head: { title: string; lead: string; rest: string };
  owing: Row[];
  others: Row[];
  isEmpty: boolean;
}

export function presentRunUpHome(jobs: readonly RunUpJobRow[], { now, timeZone }: { now: Date; timeZone: string }): RunUpHomeView {
  const rows = jobs.map((job) => ({ isOwing: job.debts.length > 0, row: rowOf(job, { now, timeZone }) }));
  const owing = rows.filter(({ isOwing }) => isOwing).map(({ row }) => row);
  const late = owing.filter(({ isLate }) => isLate).length;
  return {
    title: 'Run-up',
    head: {
      title: 'Run-up',
      lead: leadOf(owing.length, late),
      rest: 'A warm-up log from cold shows the fault before, and the repair after.',
    },
    owing,
    others: rows.filter(({ isOwing }) => !isOwing).map(({ row }) => row),
    isEmpty: jobs.length === 0,
  };
}

function leadOf(owing: number, late: number): string {
  if (owing === 0) return 'No car that went owes its log after the repair.';
  const cars = owing === 1 ? 'One car that went owes' : `${owing} cars that went owe`;
  const lateWords = late === 0 ? '' : late === 1 ? ', one of them late' : `, ${late} of them late`;
  return `${cars} the log after the repair${lateWords}.`;
}

function rowOf(job: RunUpJobRow, { now, timeZone }: { now: Date; timeZone: string }): Row {
  const [debt] = job.debts;
  const [sheet] = job.proofSheets;
  const outcome = sheet?.outcome as Outcome | undefined;
  return {
    href: urls.jobRunUp(job.id),
    key: job.keyTag === null ? '–' : String(job.keyTag),
    number: job.number,
    car: `${job.vehicle.make} ${job.vehicle.model}, ${job.vehicle.registration}`,
    logs: logsText(job.warmUpLogs.map(({ role }) => role)),
    proof: proofOf(job.asksProof, outcome),
    due: debt?.dueOn ? plainDate(debt.dueOn) : '',
    isLate: debt?.dueOn ? isPast(debt.dueOn, now, timeZone) : false,
  };
}

function proofOf(asksProof: boolean, outcome: Outcome | undefined): Row['proof'] {
  if (!outcome) return { peg: 'not-read', word: 'no log yet' };
  return asksProof ? { peg: OUTCOME_PEGS[outcome], word: OUTCOME_WORDS[outcome] } : { peg: 'not-read', word: 'logged, nothing to prove' };
}

function logsText(roles: readonly string[]): string {
  const of = (role: string): number => roles.filter((known) => known === role).length;
  const parts = [
    [of('before'), 'before'],
    [of('after'), 'after'],
  ] as const;
  return parts.flatMap(([count, word]) => (count === 0 ? [] : [count === 1 ? word : `${count} ${word}`])).join(', ');
}
