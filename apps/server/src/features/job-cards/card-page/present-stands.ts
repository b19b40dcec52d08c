import { type Step, type StepState, torqueWarnings } from '#libs/checklist';
import { namePeople } from '../name-people.ts';
import type { CardPage, WorkView } from './card-view.types.ts';
import { evidenceWords, plain } from './evidence-words.ts';
import { doneBy } from './present-phases.ts';

const WORDS: Readonly<Record<StepState['state'], string>> = {
  open: 'Read, not passed.',
  'taken-back': 'Taken back.',
  done: 'Done.',
  passed: 'Passed.',
  'passed-without': 'Passed without.',
  'not-applicable': 'Not on this car.',
  'let-go': 'Let go.',
};

/** What is on record of the step, in one line; null while there is nothing. */
export function presentStands(page: CardPage, step: Step, state: StepState): WorkView['stands'] {
  if (state.actionId === null) return null;
  const value = state.value ? evidenceWords(step, state.value) : '';
  const why = isReason(state) ? namePeople(state.why ?? '', page.names) : '';
  const text = [value, why, second(page, state), doneBy(page, state)].filter((part) => part !== '').join('. ');
  const hold = step.hold === undefined ? {} : { hold: holdOf(page, step, state) };
  return { bold: WORDS[state.state], text, ...hold };
}

const isReason = ({ state }: StepState): boolean => state === 'passed-without' || state === 'not-applicable' || state === 'let-go';

function holdOf(page: CardPage, step: Step, { state }: StepState): 'shut' | 'passed' | 'passed-without' {
  const isSpent = step.hold !== undefined && page.state.holds[step.hold]?.spent === true;
  return isSpent || (state !== 'passed' && state !== 'passed-without') ? 'shut' : state;
}

/** Who stood by when a warm engine was opened. */
function second(page: CardPage, { actionId, history, state }: StepState): string {
  if (state !== 'passed-without') return '';
  const value = history.find((entry) => entry.actionId === actionId)?.value;
  const name = typeof value === 'object' && value !== null && 'second' in value ? value.second : undefined;
  return typeof name === 'string' ? `Second person: ${page.names.get(name) ?? name}` : '';
}

/** Doubts about this step's entry: they ask for a second look and stop nothing. */
export function entryDoubts({ figures }: CardPage, { value }: StepState): string[] {
  if (value?.kind !== 'torque') return [];
  const { setAt, unit } = value.entry;
  const usedBefore = figures.earlierTorques.some((one) => one.unit === unit && plain(one.setAt) === plain(setAt));
  return [...torqueWarnings(value.entry, { usedBefore })];
}
