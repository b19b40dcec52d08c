import { DEBT_WORDS, type DebtKind, STAGE_WORDS, type Stage, WAIT_WORDS, type WaitKind } from '#libs/checklist';
import { dayText, isPast, plainDate, timeText } from '../../web/dates.ts';
import { urls } from '../../web/urls.ts';
import type { JobListRow } from './jobs.repository.ts';

export interface BaysView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  jobs: {
    href: string;
    key: string;
    car: string;
    who: string;
    what: string;
    stage: { name: string; word: string };
    wait: string;
    planned: string;
  }[];
  owing: { href: string; number: number; car: string; owed: { word: string; due: string; isLate: boolean }[] }[];
  hasJobs: boolean;
  hasOwing: boolean;
}

const carOf = ({ vehicle }: JobListRow): string => `${vehicle.make} ${vehicle.model}`;

function lead(here: readonly JobListRow[]): string {
  const standing = here.filter(({ stage }) => stage !== 'spoken-of' && stage !== 'expected').length;
  const expected = here.length - standing;
  if (here.length === 0) return 'No car is here and none is booked for today.';
  const cars = (count: number): string => (count === 1 ? 'one car' : `${count} cars`);
  if (expected === 0) return `In the house: ${cars(standing)}.`;
  return standing === 0 ? `Expected today: ${cars(expected)}.` : `In the house: ${cars(standing)}; expected today: ${cars(expected)}.`;
}

function waitText(job: JobListRow): string {
  const [wait] = job.waits;
  if (!wait) return '';
  const word = WAIT_WORDS[wait.kind as WaitKind] ?? wait.kind;
  return wait.words === '' ? word : `${word}: ${wait.words}`;
}

/** `mayTakeCalls`: the desk's people find the complaint form from here. */
export function presentBays(
  { here, owing }: { here: readonly JobListRow[]; owing: readonly JobListRow[] },
  { now, timeZone, mayTakeCalls }: { now: Date; timeZone: string; mayTakeCalls: boolean },
): BaysView {
  return {
    title: 'Bays',
    head: {
      title: 'Bays',
      lead: lead(here),
      rest: dayText(now, timeZone),
      actions: mayTakeCalls
        ? [
            { href: urls.counter, label: 'Take a call', main: true },
            { href: urls.tablets, label: 'Tablets' },
          ]
        : [],
    },
    jobs: here.map((job) => ({
      href: urls.card(job.id),
      key: job.keyTag === null ? '–' : String(job.keyTag),
      car: carOf(job),
      who: `${job.customer.name}, ${job.vehicle.registration}`,
      what: job.template.name,
      stage: { name: job.stage, word: STAGE_WORDS[job.stage as Stage] ?? job.stage },
      wait: waitText(job),
      planned:
        job.bookings
          .map(
            ({ place, startsAt, endsAt }) =>
              `${place.name} ${dayText(startsAt, timeZone)}, ${timeText(startsAt, timeZone)} to ${timeText(endsAt, timeZone)}`,
          )
          .at(0) ?? '',
    })),
    owing: owing.map((job) => ({
      href: mayTakeCalls ? urls.job(job.id) : urls.card(job.id),
      number: job.number,
      car: `${carOf(job)}, ${job.vehicle.registration}`,
      owed: job.debts.map(({ kind, dueOn }) => ({
        word: DEBT_WORDS[kind as DebtKind] ?? kind,
        due: dueOn === null ? '' : plainDate(dueOn),
        isLate: dueOn !== null && isPast(dueOn, now, timeZone),
      })),
    })),
    hasJobs: here.length > 0,
    hasOwing: owing.length > 0,
  };
}
