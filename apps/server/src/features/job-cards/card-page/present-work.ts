import { canDo, HOLD_WORDS, type HoldKey, SAFE_TO_OPEN_LIMIT_C, type Step, type StepState, stepsOf } from '#libs/checklist';
import { readingRule } from '#libs/charts';
import { urls } from '../../../web/urls.ts';
import { namePeople } from '../name-people.ts';
import { cardForm } from './card-form.ts';
import type { ButtonView, CardPage, FormView, ReadingView, WorkView } from './card-view.types.ts';
import { coldVerdict } from './cold-verdict.ts';
import { evidenceParts } from './evidence-parts.ts';
import { plain } from './evidence-words.ts';
import { missingFacts, otherFacts } from './fact-forms.ts';
import { presentFigures } from './present-figures.ts';
import { presentFolds } from './present-folds.ts';
import { presentJugs } from './present-jugs.ts';
import { presentPhotos } from './present-photos.ts';
import { entryDoubts, presentStands } from './present-stands.ts';
import { readingForm, WORK } from './reading-form.ts';
import { whenWords } from './when-words.ts';

const RULE_PX = 560;

/** The open step's own work: what to do, this car's figures, the form of its evidence, and what can be said beside it. */
export function presentWork(page: CardPage, step: Step, state: StepState): WorkView {
  const isBlocked = shutWords(page, step) !== null;
  const isToDo = !isBlocked && mayRecord(page, step, state);
  const { figures, notes } = presentFigures(page, step);
  const reading = isToDo ? withVerdict(readingForm(page, step), state) : null;
  return {
    title: step.title,
    help: step.help,
    caution: step.caution === undefined ? null : splitCaution(step.caution),
    shut: shutWords(page, step),
    stands: presentStands(page, step, state),
    figures,
    figureNotes: notes,
    warnings: entryDoubts(page, state),
    facts: missingFacts(page, step),
    chart: step.evidence.kind === 'cold-reading' ? rule(state) : null,
    reading,
    jugs: isToDo ? presentJugs(page, step, state) : null,
    clock: isToDo ? clockOf(page, step) : null,
    links: linksOf(page, step),
    form: isToDo ? workForm(page, step, state) : null,
    others: isToDo ? otherForms(page, step, state) : [],
    photos: presentPhotos(page, state),
    folds: [...presentFolds(page, step, state), ...otherFacts(page, step)],
  };
}

/** Where the work of a step is done, if not on the card; a log that is kept there ticks its step. */
function linksOf({ row }: CardPage, { key, evidence }: Step): WorkView['links'] {
  if (evidence.kind === 'variant') return [{ href: urls.jobParts(row.id), label: 'To the Parts bench' }];
  return LOG_STEPS.has(key) ? [{ href: urls.jobRunUp(row.id), label: 'To the Run-up' }] : [];
}

const LOG_STEPS: ReadonlySet<string> = new Set(['before-log', 'after-log']);

const isOpenStep = ({ state }: StepState): boolean => state === 'open' || state === 'taken-back';

/** A hold point that is spent takes a new reading; a mere reason gives way to evidence. */
function mayRecord(page: CardPage, step: Step, state: StepState): boolean {
  const isSpent = step.hold !== undefined && page.state.holds[step.hold]?.spent === true;
  return isOpenStep(state) || isSpent || state.state === 'passed-without';
}

/** The first sentence says what the danger is. */
function splitCaution(caution: string): { bold: string; text: string } {
  const end = /[.:!]\s/.exec(caution);
  return end ? { bold: caution.slice(0, end.index + 1), text: caution.slice(end.index + 2) } : { bold: caution, text: '' };
}

function shutWords(page: CardPage, step: Step): WorkView['shut'] {
  const state = page.state.steps[step.key];
  if (!state || !mayRecord(page, step, state)) return null;
  const { why, holds } = canDo(page.state, step.key);
  const reasons = why.filter((text) => !text.startsWith('Already '));
  if (reasons.length === 0) return null;
  return {
    bold: 'Not yet.',
    text: reasons.map((text) => namePeople(text, page.names)).join(' '),
    links: holds.flatMap((hold) => holdLink(page, hold)),
  };
}

function holdLink(page: CardPage, hold: HoldKey): { href: string; label: string }[] {
  const own = stepsOf(page.state.template).filter((step) => step.hold === hold);
  const step = own.find(({ key }) => page.state.steps[key]?.state === 'open') ?? own[0];
  return step ? [{ href: urls.cardStep(page.row.id, step.key), label: `To “${HOLD_WORDS[hold].title}”` }] : [];
}

function rule({ value }: StepState): WorkView['chart'] {
  const reading = value?.kind === 'cold-reading' ? { tempC: value.reading.tempC, uncertaintyC: value.reading.expandedUncertaintyC } : null;
  const { svg, table } = readingRule(
    { limitC: SAFE_TO_OPEN_LIMIT_C, reading },
    { palette: 'page', idPrefix: 'cold', widthPx: RULE_PX, ground: 'sheet' },
  );
  return { svg, table };
}

function withVerdict(reading: ReadingView | null, { value }: StepState): ReadingView | null {
  if (!reading || value?.kind !== 'cold-reading') return reading;
  return { ...reading, verdict: coldVerdict(value.reading) };
}

function workForm(page: CardPage, step: Step, state: StepState): FormView | null {
  const { kind } = step.evidence;
  if (kind === 'variant' || kind === 'timer') return null;
  return cardForm(page, {
    name: WORK,
    act: kind === 'jugs' ? 'pour' : 'do',
    place: step.key,
    parts: evidenceParts(page, step),
    buttons: workButtons(page, step, state),
  });
}

function workButtons(page: CardPage, step: Step, { state }: StepState): ButtonView[] {
  const passes = step.hold === undefined ? {} : { passes: true };
  switch (step.evidence.kind) {
    case 'tick':
      return [{ label: state === 'taken-back' ? 'Done after all' : 'Done', look: 'main go', ...passes }];
    case 'cold-reading':
      return [{ label: 'Record the reading', look: 'main go', ...passes }];
    case 'list':
      return listButtons(page, step);
    case 'jugs':
      return [{ label: 'This amount is in', look: page.figures.recipe.kind === 'ready' && isFirstFill(step) ? '' : 'main go' }];
    case 'reading':
    case 'litres':
    case 'choice':
    case 'count':
    case 'torque':
    case 'level':
      return [{ label: step.hold === undefined ? 'Record' : 'Record and pass the hold point', look: 'main go', ...passes }];
    case 'variant':
    case 'timer':
      return [];
  }
}

const isFirstFill = ({ evidence }: Step): boolean => evidence.kind === 'jugs' && evidence.fill === 'first-fill';

function listButtons(page: CardPage, { evidence }: Step): ButtonView[] {
  if (evidence.kind !== 'list' || evidence.returns === undefined) {
    return [
      { label: 'Record the list', look: 'main go' },
      { label: 'Nothing to name', look: 'whole', name: 'none', value: '1' },
    ];
  }
  const value = page.state.steps[evidence.returns]?.value;
  return [
    { label: value?.kind === 'list' && value.items.length > 0 ? 'All back on, but for what is ticked' : 'All back on', look: 'main go' },
  ];
}

/** Closing a step of jugs, starting and stopping a timer: a button each. */
function otherForms(page: CardPage, step: Step, state: StepState): FormView[] {
  const { kind } = step.evidence;
  const place = step.key;
  if (kind === 'jugs') {
    const hasPoured = state.history.some((one) => one.kind === 'pour-jug' && one.round === state.round && !one.takenBack);
    const label = hasPoured ? 'No more goes in: close the step' : 'It took nothing: close the step';
    return [cardForm(page, { name: 'close', act: 'close', place, buttons: [{ label, look: 'big whole' }] })];
  }
  if (kind !== 'timer') return [];
  const isRunning = page.state.workTimes.some((time) => time.step === place && time.stoppedAt === null);
  return [
    cardForm(page, {
      name: 'clock',
      act: isRunning ? 'stop' : 'start',
      place,
      buttons: [{ label: isRunning ? 'Stopped' : 'Start', look: 'main go' }],
    }),
  ];
}

/** Counted from the start that the server has: a reloaded page shows the same time. */
function clockOf(page: CardPage, step: Step): WorkView['clock'] {
  if (step.evidence.kind !== 'timer') return null;
  const running = page.state.workTimes.find((time) => time.step === step.key && time.stoppedAt === null);
  const planned = step.evidence.minutes === null ? '' : ` About ${plain(step.evidence.minutes)} minutes.`;
  if (!running) return { words: `Not running.${planned}`, since: '' };
  return { words: `Runs since ${whenWords(running.startedAt, page)}.${planned}`, since: running.startedAt };
}
