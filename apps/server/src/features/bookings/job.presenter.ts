import { DEBT_WORDS, type DebtKind, STAGE_WORDS, type Stage, WAIT_WORDS, type WaitKind } from '#libs/checklist';
import type { FormState } from '../../platform/pages/form-state.ts';
import { dateTimeText, isoDay, plainDate, timeText } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { Yes } from '../estimates/estimates.service.ts';
import type { Place } from './bookings.repository.ts';
import type { JobPageRow } from './jobs.repository.ts';

const HOW_WORDS: Readonly<Record<string, string>> = {
  phone: 'by phone',
  'in-person': 'in person',
  message: 'by message',
  signature: 'by signature',
};

export interface JobFacts {
  job: JobPageRow;
  yeses: readonly Yes[];
  places: readonly Place[];
  hands: readonly { id: string; displayName: string }[];
  phases: readonly { key: string; title: string; minutes: number }[];
  nextKeyTag: number;
  now: Date;
  timeZone: string;
  currency: string;
}

export interface JobForms {
  arrival: FormState;
  booking: FormState;
  debt: FormState;
}

export interface JobView {
  title: string;
  head: {
    title: string;
    lead: string;
    rest: string;
    keyTag: { key: string } | undefined;
    actions: { href: string; label: string; main?: boolean }[];
  };
  customer: { href: string; name: string; phone: string };
  vehicle: { href: string; text: string };
  complaint: { words: string; when: string };
  comebackOf: { href: string; number: number } | undefined;
  comebacks: { href: string; number: number }[];
  stage: { name: string; word: string };
  yeses: {
    saidBy: string;
    when: string;
    how: string;
    ceiling: string;
    words: string;
    oldPartBack: boolean;
    packages: { name: string; gross: string }[];
  }[];
  yesHref: string;
  runUpHref: string;
  bookings: { phase: string; place: string; when: string; callOff: string }[];
  waits: { word: string; words: string; since: string }[];
  debts: { word: string; due: string; words: string; end: string }[];
  history: { word: string; at: string; why: string }[];
  arrival: { action: string; fields: Record<string, FieldView> } | undefined;
  booking: { action: string; fields: Record<string, FieldView> } | undefined;
  fellThrough: string | undefined;
  errors: FormState['summary'];
}

const stageWord = (stage: string): string => STAGE_WORDS[stage as Stage] ?? stage;
const IS_AHEAD = new Set(['spoken-of', 'expected']);
const IS_GONE = new Set(['keys-out', 'squared', 'fell-through']);

function leadOf({ job, yeses }: JobFacts): { lead: string; rest: string } {
  const wait = job.waits.find(({ endedAt }) => endedAt === null);
  const rest = yeses.length === 0 ? 'No yes is on record: work may not begin; making safe may.' : '';
  if (wait) return { lead: `${stageWord(job.stage)}. ${WAIT_WORDS[wait.kind as WaitKind] ?? wait.kind}.`, rest };
  return { lead: `${stageWord(job.stage)}.`, rest };
}

function arrivalForm(form: FormState, { job, nextKeyTag }: JobFacts): JobView['arrival'] {
  if (!IS_AHEAD.has(job.stage)) return undefined;
  return {
    action: urls.arrival(job.id),
    fields: formFields(form, [
      {
        name: 'keyTag',
        label: 'Key tag',
        value: String(nextKeyTag),
        inputmode: 'numeric',
        required: true,
        short: true,
        hint: 'The next free one.',
      },
      { name: 'odometerKm', label: 'Odometer', unit: 'km', inputmode: 'numeric', optional: true, short: true },
      { name: 'leftInCar', label: 'Left in the car, damage seen', lines: 2, optional: true, maxlength: 500 },
    ]),
  };
}

function bookingForm(form: FormState, { job, places, hands, phases, now, timeZone }: JobFacts): JobView['booking'] {
  if (IS_GONE.has(job.stage)) return undefined;
  const [first] = phases;
  return {
    action: urls.booking(job.id),
    fields: formFields(form, [
      {
        name: 'phase',
        label: 'Part of the job',
        value: first?.key ?? '',
        options: phases.map(({ key, title, minutes }) => ({ value: key, label: `${title}, ${minutes} min` })),
      },
      {
        name: 'placeId',
        label: 'Where',
        value: places[0]?.id ?? '',
        options: places.map(({ id, name, words }) => ({ value: id, label: words === '' ? name : `${name}, ${words}` })),
      },
      {
        name: 'staffId',
        label: 'Whose hands',
        value: '',
        optional: true,
        options: [{ value: '', label: 'Nobody’s yet' }, ...hands.map(({ id, displayName }) => ({ value: id, label: displayName }))],
      },
      { name: 'day', label: 'Day', type: 'date', value: isoDay(now, timeZone), required: true },
      { name: 'from', label: 'From', type: 'time', value: '08:00', required: true },
      {
        name: 'minutes',
        label: 'Length',
        unit: 'min',
        value: String(first?.minutes ?? 60),
        inputmode: 'numeric',
        required: true,
        short: true,
      },
    ]),
  };
}

export function presentJob(facts: JobFacts, forms: JobForms): JobView {
  const { job, timeZone, currency } = facts;
  const car = `${job.vehicle.make} ${job.vehicle.model}`;
  const phaseTitle = (key: string): string => facts.phases.find((phase) => phase.key === key)?.title ?? key;
  return {
    title: `Job ${job.number}`,
    head: {
      title: `Job ${job.number}`,
      ...leadOf(facts),
      keyTag: job.keyTag === null || IS_GONE.has(job.stage) ? undefined : { key: String(job.keyTag) },
      actions: [
        { href: urls.draft(job.id), label: 'To the till' },
        { href: urls.card(job.id), label: 'Open the card', main: true },
      ],
    },
    customer: { href: urls.customer(job.customer.id), name: job.customer.name, phone: job.customer.phone },
    vehicle: { href: urls.vehicle(job.vehicle.id), text: `${car}, ${job.vehicle.registration}` },
    complaint: { words: job.complaint, when: job.complaintWhen },
    comebackOf: job.comebackOf ? { href: urls.job(job.comebackOf.id), number: job.comebackOf.number } : undefined,
    comebacks: job.comebacks.map(({ id, number }) => ({ href: urls.job(id), number })),
    stage: { name: job.stage, word: stageWord(job.stage) },
    yeses: facts.yeses.map((yes) => ({
      saidBy: yes.saidBy,
      when: dateTimeText(yes.saidAt, timeZone),
      how: HOW_WORDS[yes.how] ?? yes.how,
      ceiling: `${yes.ceilingGross} ${currency}`,
      words: yes.words,
      oldPartBack: yes.oldPartBack,
      packages: yes.packages.map(({ name, gross }) => ({ name, gross: `${gross} ${currency}` })),
    })),
    yesHref: urls.yes(job.id),
    runUpHref: urls.jobRunUp(job.id),
    bookings: job.bookings.map(({ id, phase, place, startsAt, endsAt }) => ({
      phase: phaseTitle(phase),
      place: place.name,
      when: `${dateTimeText(startsAt, timeZone)} to ${timeText(endsAt, timeZone)}`,
      callOff: urls.callOff(id),
    })),
    waits: job.waits
      .filter(({ endedAt }) => endedAt === null)
      .map(({ kind, words, since }) => ({ word: WAIT_WORDS[kind as WaitKind] ?? kind, words, since: dateTimeText(since, timeZone) })),
    debts: job.debts
      .filter(({ endedAt }) => endedAt === null)
      .map(({ id, kind, dueOn, words }) => ({
        word: DEBT_WORDS[kind as DebtKind] ?? kind,
        due: dueOn === null ? '' : plainDate(dueOn),
        words,
        end: urls.endDebt(id),
      })),
    history: job.stageChanges.map(({ to, at, why }) => ({ word: stageWord(to), at: dateTimeText(at, timeZone), why })),
    arrival: arrivalForm(forms.arrival, facts),
    booking: bookingForm(forms.booking, facts),
    fellThrough: IS_AHEAD.has(job.stage) ? urls.fellThrough(job.id) : undefined,
    errors: [...forms.arrival.summary, ...forms.booking.summary, ...forms.debt.summary],
  };
}
