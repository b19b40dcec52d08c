import {
  DEBT_WORDS,
  type Difference,
  findStep,
  FREE_TAKE_BACK_MS,
  type HistoryEntry,
  type Step,
  stepsOf,
  WAIT_WORDS,
  WHOLE_CARD,
} from '#libs/checklist';
import { plainDate } from '../../../web/dates.ts';
import { urls } from '../../../web/urls.ts';
import { namePeople } from '../name-people.ts';
import { cardForm } from './card-form.ts';
import type { CardPage, CardView, WorkView } from './card-view.types.ts';
import { amountWords, evidenceWords } from './evidence-words.ts';
import { presentHead } from './present-head.ts';
import { presentPhases } from './present-phases.ts';
import { presentWork } from './present-work.ts';
import { whenWords } from './when-words.ts';
import { UNDOABLE } from './undoable.ts';

const FORMS = [
  'work',
  'pour-next',
  'close',
  'clock',
  'without',
  'not-here',
  'take-back',
  'let-go',
  'finding',
  'photo',
  'note',
  'wait',
  'go-back',
];
const FORMS_BESIDE = ['confirm', 'time', 'capacity', 'residual', 'just-done', 'settle', 'wait-over'];
const LIGHTS = [
  ['day', 'Day'],
  ['sun', 'Sun'],
  ['bay', 'Bay'],
] as const;

export function presentCard(page: CardPage, light: string): CardView {
  const { row, state, step } = page;
  const stepState = step ? state.steps[step.key] : undefined;
  const work = step && stepState ? presentWork(page, step, stepState) : nothingLeft(page);
  const errors = errorsOf(page);
  const unsettled = state.differences.filter(({ settled }) => settled === null);
  return {
    title: `${step?.title ?? 'Job card'}, ${row.vehicle.registration}`,
    scripts: [page.isTablet === true ? 'tablet.js' : 'card.js'],
    head: presentHead(page),
    ways: [
      { href: urls.bays, label: 'All cars' },
      ...(page.staff.role === 'technician' ? [] : [{ href: urls.job(row.id), label: `Job ${row.number}` }]),
    ],
    phases: presentPhases(page),
    work,
    justDone: errors.length > 0 ? null : justDone(page),
    differences: unsettled.map((one) => presentDifference(page, one)),
    toLookAt:
      unsettled.length === 0
        ? ''
        : unsettled.length === 1
          ? 'One entry did not fit the card'
          : `${unsettled.length} entries did not fit the card`,
    toConfirm: toConfirm(page),
    waits: state.waits.map((wait) => ({
      text: waitWords(page, wait),
      form:
        wait.actionId === null
          ? null
          : cardForm(page, {
              name: 'wait-over',
              act: 'wait-over',
              place: WHOLE_CARD,
              hidden: { of: wait.actionId },
              buttons: [{ label: 'Over', look: '' }],
            }),
    })),
    checks: state.checks.filter((text) => !work.warnings.includes(text)).map((text) => namePeople(text, page.names)),
    errors,
    sent: { state: 'saved', bold: 'All saved', text: sentText(page) },
    lights: { action: urls.light, choices: LIGHTS.map(([value, label]) => ({ value, label, current: value === light })) },
  };
}

function nothingLeft(page: CardPage): WorkView {
  const owed = page.state.debts.filter(({ state }) => state === 'open');
  const help = owed.map(({ kind, due }) => `${DEBT_WORDS[kind]}${due === null ? '' : `, by ${plainDate(new Date(due))}`}`).join('; ');
  return {
    title: owed.length === 0 ? 'Nothing is left to do on this card' : 'Only what is owed is left',
    help,
    caution: null,
    shut: null,
    stands: null,
    figures: [],
    figureNotes: [],
    warnings: [],
    facts: [],
    chart: null,
    reading: null,
    jugs: null,
    clock: null,
    links: [],
    form: null,
    others: [],
    photos: [],
    folds: [],
  };
}

/** The last entry of this person, for as long as it can be taken back without a reason. */
function justDone(page: CardPage): CardView['justDone'] {
  const { state, now, staff } = page;
  const entries = [...state.history, ...stepsOf(state.template).flatMap(({ key }) => state.steps[key]?.history ?? [])];
  const last = entries.filter(({ by, takenBack }) => by === staff.staffId && takenBack === null).reduce(later, null);
  if (!last || !TAPS.has(last.kind)) return null;
  const agoMs = now.getTime() - Date.parse(last.readAt);
  if (agoMs < 0 || agoMs > FREE_TAKE_BACK_MS || last.deviceId !== (page.deviceId ?? null)) return null;
  const step = findStep(state.template, last.step);
  return {
    text: step ? doneWords(step, last) : 'That is on the card.',
    until: new Date(Date.parse(last.readAt) + FREE_TAKE_BACK_MS).toISOString(),
    form: cardForm(page, {
      name: 'just-done',
      act: 'take-back',
      place: last.step,
      hidden: { of: last.actionId },
      buttons: [{ label: 'Take back', look: '' }],
    }),
  };
}

/** What was entered under this person's name while nobody could prove whose it is. */
function toConfirm(page: CardPage): CardView['toConfirm'] {
  const { state, staff } = page;
  const entries = [...state.history, ...stepsOf(state.template).flatMap(({ key }) => state.steps[key]?.history ?? [])];
  return entries
    .filter(({ by, byProof, takenBack }) => by === staff.staffId && byProof === 'picked-offline' && takenBack === null)
    .map((entry) => ({
      text: `${findStep(state.template, entry.step)?.title ?? 'The card'}, ${whenWords(entry.readAt, page)}`,
      form: cardForm(page, {
        name: 'confirm',
        act: 'confirm',
        place: WHOLE_CARD,
        hidden: { of: entry.actionId },
        buttons: [{ label: 'It is mine', look: '' }],
      }),
    }));
}

const TAPS: ReadonlySet<string> = new Set([...UNDOABLE, 'note', 'finding', 'wait', 'wait-over', 'go-back']);

const later = (one: HistoryEntry | null, other: HistoryEntry): HistoryEntry => (one && one.order > other.order ? one : other);

function doneWords(step: Step, { kind, evidence, value }: HistoryEntry): string {
  if (kind === 'pour-jug' && evidence?.kind === 'fill') return `${step.title}: ${amountWords(evidence.amounts)} poured.`;
  if (kind === 'note' || kind === 'finding') return `${step.title}: the ${kind} is kept.`;
  if (kind === 'not-applicable') return `${step.title}: left out on this car.`;
  if (kind === 'pass-without') return `${step.title}: passed without. The owner sees it.`;
  if (kind.endsWith('-timer')) return `${step.title}: the time ${kind === 'start-timer' ? 'runs' : 'has stopped'}.`;
  const words = evidence ? evidenceWords(step, evidence) : '';
  return words === '' || value === undefined ? `${step.title}: done.` : `${step.title}: ${words}.`;
}

function presentDifference(page: CardPage, { actionId, action, why }: Difference): CardView['differences'][number] {
  return {
    what: whatWasSent(page, action),
    why: namePeople(why, page.names),
    settle:
      actionId === null
        ? null
        : cardForm(page, {
            name: 'settle',
            act: 'settle',
            place: WHOLE_CARD,
            hidden: { of: actionId },
            buttons: [{ label: 'Looked at: settle it', look: '' }],
          }),
  };
}

function whatWasSent(page: CardPage, action: unknown): string {
  const { step, by, readAt } = (typeof action === 'object' && action !== null ? action : {}) as Readonly<Record<string, unknown>>;
  const title = typeof step === 'string' ? (findStep(page.state.template, step)?.title ?? step) : 'An entry';
  const who = typeof by === 'string' ? (page.names.get(by) ?? 'somebody') : 'somebody';
  const at = typeof readAt === 'string' ? whenWords(readAt, page) : '';
  return `${title}, ${who}${at === '' ? '' : ` ${at}`}`;
}

function waitWords(page: CardPage, { kind, since, until, words, who }: CardPage['state']['waits'][number]): string {
  const untilDay = until === null || Number.isNaN(Date.parse(until)) ? '' : `, expected by ${plainDate(new Date(until))}`;
  const acts = page.names.get(who) ?? who;
  const said = words === null ? '' : `: ${namePeople(words, page.names)}`;
  return `${WAIT_WORDS[kind]} since ${whenWords(since, page)}${untilDay}${acts === '' ? '' : `, ${acts}`}${said}`;
}

function errorsOf(page: CardPage): CardView['errors'] {
  return [...FORMS, ...FORMS_BESIDE].flatMap((name) =>
    page.formState(name).summary.map(({ field, message }) => ({ field: field === '' ? '' : `${name}-${field}`, message })),
  );
}

/** What stands on this page has reached the server: it was made there. */
function sentText({ lastReceived, ...page }: CardPage): string {
  return lastReceived === null ? 'nothing is on this card yet' : `the last entry at ${whenWords(lastReceived, page)}`;
}
