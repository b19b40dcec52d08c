import { type CardState, nextSteps, type Step, type StepState, stepsOf } from '#libs/checklist';

const TALK: ReadonlySet<string> = new Set([
  'note',
  'photo',
  'finding',
  'wait',
  'wait-over',
  'take-back',
  'confirm-name',
  'settle-difference',
]);

/**
 * The step to show large: the first that can be done from where the work last was, so that a step left out on purpose does not
 * call the technician back each time; then the first that can be done at all.
 *
 * @returns null where nothing is left to do
 */
export function leadingStep(state: CardState): Step | null {
  const open = nextSteps(state);
  const order = stepsOf(state.template).map(({ key }) => key);
  const last = lastTouched(state, order);
  const onwards = open.filter(({ step }) => order.indexOf(step.key) >= last);
  const found = onwards.find(({ can }) => can) ?? open.find(({ can }) => can) ?? onwards[0] ?? open[0];
  return found?.step ?? null;
}

function lastTouched(state: CardState, order: readonly string[]): number {
  const touched = order.map((key) => touchedAt(state.steps[key]));
  const latest = Math.max(-1, ...touched);
  return latest < 0 ? 0 : touched.indexOf(latest);
}

function touchedAt(step: StepState | undefined): number {
  const live = (step?.history ?? []).filter((entry) => entry.round === step?.round && !entry.takenBack && !TALK.has(entry.kind));
  return Math.max(-1, ...live.map((entry) => entry.order));
}
