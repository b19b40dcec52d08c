import { HOLD_WORDS, type Phase, type Step, type StepState } from '#libs/checklist';
import { plainDate } from '../../../web/dates.ts';
import { urls } from '../../../web/urls.ts';
import { namePeople } from '../name-people.ts';
import type { CardPage, PhaseView, StepView } from './card-view.types.ts';
import { evidenceWords } from './evidence-words.ts';
import { whenWords } from './when-words.ts';

const FINISHED: ReadonlySet<StepState['state']> = new Set(['done', 'passed', 'passed-without', 'not-applicable', 'let-go']);

/** The pipe at the left: phases with their steps; those that are finished are folded. */
export function presentPhases(page: CardPage): PhaseView[] {
  const { phases } = page.state.template;
  const here = phases.findIndex(({ steps }) => steps.some(({ key }) => key === page.step?.key));
  return phases.map((phase, index) => presentPhase(page, phase, index - here));
}

/** `ahead`: how far the phase lies before (negative) or behind the one that is worked on. */
function presentPhase(page: CardPage, phase: Phase, ahead: number): PhaseView {
  const states = phase.steps.flatMap(({ key }) => page.state.steps[key] ?? []);
  const finished = states.filter(({ state }) => FINISHED.has(state)).length;
  const needed = phase.steps.filter(({ key, optional }) => optional !== true && !FINISHED.has(page.state.steps[key]?.state ?? 'open'));
  return {
    title: phase.title,
    summary: finished === phase.steps.length ? `all ${finished} done` : `${finished} of ${phase.steps.length} done`,
    isOpen: ahead === 0 || needed.length > 0 || (ahead > 0 && finished < phase.steps.length),
    steps: phase.steps.flatMap((step) => {
      const state = page.state.steps[step.key];
      return state ? [presentStep(page, step, state)] : [];
    }),
  };
}

function presentStep(page: CardPage, step: Step, state: StepState): StepView {
  const isChosen = step.key === page.step?.key;
  const differs = page.state.differences.some((one) => one.settled === null && stepOf(one.action) === step.key);
  const look = lookOf(state, { isChosen, differs });
  return {
    id: `step-${step.key}`,
    state: look,
    ...(step.hold === undefined ? {} : { hold: holdLook(page, step, state) }),
    current: isChosen,
    title: step.title,
    note: noteOf(page, step, state),
    spoken: spokenOf(step, state, look),
    href: urls.cardStep(page.row.id, step.key),
  };
}

function lookOf(state: StepState, { isChosen, differs }: { isChosen: boolean; differs: boolean }): StepView['state'] {
  if (differs) return 'differs';
  if (FINISHED.has(state.state)) return 'done';
  return isChosen ? 'now' : 'ahead';
}

function holdLook({ state: card }: CardPage, step: Step, state: StepState): 'shut' | 'passed' | 'passed-without' {
  const hold = step.hold === undefined ? undefined : card.holds[step.hold];
  if (hold?.spent === true) return 'shut';
  return state.state === 'passed' || state.state === 'passed-without' ? state.state : 'shut';
}

function spokenOf(step: Step, state: StepState, look: StepView['state']): string {
  const words = {
    open: 'to do',
    done: 'done',
    'not-applicable': 'not on this car',
    passed: 'passed',
    'passed-without': 'passed without',
    'taken-back': 'taken back',
    'let-go': 'let go',
  }[state.state];
  return [step.hold === undefined ? '' : 'hold point', words, look === 'differs' ? 'with a difference to look at' : '']
    .filter((word) => word !== '')
    .join(', ');
}

function noteOf(page: CardPage, step: Step, state: StepState): string {
  const who = doneBy(page, state);
  switch (state.state) {
    case 'done':
    case 'passed':
      return [who, state.value ? evidenceWords(step, state.value) : ''].filter((text) => text !== '').join(': ');
    case 'passed-without':
      return `Passed without. ${who}`;
    case 'not-applicable':
      return `Not on this car: ${state.why ?? ''}`;
    case 'let-go':
      return `Let go: ${state.why ?? ''}`;
    case 'taken-back':
    case 'open':
      return openNote(page, step, state);
  }
}

function openNote(page: CardPage, step: Step, state: StepState): string {
  const owed = page.state.debts.find((debt) => debt.step === step.key && debt.state === 'open');
  if (owed) return owed.due === null ? 'Owed' : `Owed by ${plainDate(new Date(owed.due))}`;
  if (state.why !== null) return namePeople(state.why, page.names);
  if (step.hold !== undefined) return `Hold point. Comes before ${HOLD_WORDS[step.hold].protects}.`;
  if (state.state === 'taken-back') return 'Taken back';
  if (step.figures?.includes('tray') === true && page.figures.trayL !== null && step.evidence.kind === 'tick') {
    return `${page.figures.trayL} L or larger`;
  }
  return step.optional === true ? 'Where it is needed' : '';
}

/** @returns such as 'Jory 09:21' */
export function doneBy(page: CardPage, { by, readAt, actionId, history }: StepState): string {
  if (by === null || readAt === null) return '';
  const entry = history.find((one) => one.actionId === actionId);
  const name = page.names.get(by) ?? 'somebody';
  return `${entry?.byProof === 'picked-offline' ? `said to be ${name}` : name} ${whenWords(readAt, page)}`.trim();
}

function stepOf(action: unknown): unknown {
  return typeof action === 'object' && action !== null && 'step' in action ? action.step : undefined;
}
