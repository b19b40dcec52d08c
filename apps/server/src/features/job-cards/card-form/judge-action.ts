import { type Action, applyAction, type CardState, findStep, type Step, stepsOf, WHOLE_CARD } from '#libs/checklist';
import { MAIN_FIELD } from './evidence-from-form.ts';

/** What an action of a form comes to before anything is kept of it. */
export interface Judged {
  /** The card with it. */
  readonly after: CardState;
  /** Null where it fits; else why not, with people named by their ids, and beside which field of its form that is said. */
  readonly refusal: { readonly why: string; readonly field: string } | null;
}

/** The step, phase or card that a form belongs to; null where this card has none of that name. */
export function placeOf({ template }: CardState, key: unknown): Step | string | null {
  const place = typeof key === 'string' ? key : '';
  const step = findStep(template, place);
  if (step) return step;
  return place === WHOLE_CARD || template.phases.some((phase) => phase.key === place) ? place : null;
}

/** Whether an action fits: a person at a form mends what does not, so that nothing of it is kept as a difference. */
export function judgeAction(state: CardState, action: Action): Judged {
  const after = applyAction(state, action);
  const difference = after.differences.find(({ actionId }) => actionId === action.id);
  if (!difference || isInHistory(after, action.id)) return { after, refusal: null };
  return { after, refusal: { why: difference.why, field: fieldOf(state, action) } };
}

/** Beside which field of its form a misfit is shown. */
function fieldOf({ template }: CardState, { kind, step }: Action): string {
  if (kind === 'pass-without') return 'reason';
  if (kind === 'take-back') return 'takenBackWhy';
  const evidence = kind === 'record' ? findStep(template, step)?.evidence : undefined;
  return evidence ? MAIN_FIELD[evidence.kind] : '';
}

function isInHistory(state: CardState, actionId: string): boolean {
  const entries = [...state.history, ...stepsOf(state.template).flatMap(({ key }) => state.steps[key]?.history ?? [])];
  return entries.some((entry) => entry.actionId === actionId);
}

/** What is said beside a step, and what takes it back, leaves the person at it. */
const LEADS_ON: ReadonlySet<string> = new Set(['tick', 'record', 'pass-without', 'not-applicable', 'stop-timer', 'let-go']);

/** Where an act leaves the person: the step of the form is finished, and the card leads on to the next one. */
export function isFinishedBy(after: CardState, { kind, step }: Pick<Action, 'kind' | 'step'>): boolean {
  const status = after.steps[step]?.state;
  if (status === undefined) return kind === 'go-back';
  return LEADS_ON.has(kind) && status !== 'open' && status !== 'taken-back';
}
