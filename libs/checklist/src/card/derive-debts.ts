import { type Stage } from '../stages/stages.ts';
import { stepsOf } from '../template/steps-of.ts';
import { type StepDebt, type Template } from '../template/template.ts';
import { type CardFacts, type Debt, type StepState } from './card-state.ts';
import { isComplete } from './derive-step.ts';

const DAY_MS = 86_400_000;

/** What is still owed once the keys are out: steps that never hold the car, each with its date. Nothing if it was never opened. */
export function deriveDebts(
  template: Template,
  steps: Readonly<Record<string, StepState>>,
  { stage, isOpened, facts }: { stage: Stage; isOpened: boolean; facts: CardFacts },
): readonly Debt[] {
  const keys = keysOut(template, steps);
  if (stage !== 'keys-out' || !isOpened || keys === null) return [];
  return stepsOf(template).flatMap((step) => {
    const state = steps[step.key];
    if (!step.debt || !state) return [];
    if (step.debt.kind === 'waste' && (facts.numbers['wasteL']?.value ?? facts.numbers['drainedL']?.value ?? 0) === 0) return [];
    return asDebt(step.debt, state, keys);
  });
}

function asDebt(debt: StepDebt, state: StepState, keys: StepState): readonly Debt[] {
  const since = keys.readAt ?? '';
  const due = dueDate(since, debt.dueDays);
  const owed = { kind: debt.kind, step: state.key, since, due, reason: state.why };
  if (state.state === 'open' || state.state === 'taken-back') return [{ ...owed, state: 'open' }];
  if (state.state === 'let-go') return [{ ...owed, state: 'let-go' }];
  const doneLater = isComplete(state.state) && (state.completions.at(-1) ?? -1) > (keys.completions.at(-1) ?? -1);
  return doneLater ? [{ ...owed, state: 'done' }] : [];
}

function keysOut(template: Template, steps: Readonly<Record<string, StepState>>): StepState | null {
  const marks = template.stageMarks.filter((mark) => mark.stage === 'keys-out').flatMap((mark) => mark.steps);
  return marks.flatMap((key) => steps[key] ?? []).find((step) => isComplete(step.state)) ?? null;
}

function dueDate(since: string, days: number): string | null {
  const ms = Date.parse(since) + days * DAY_MS;
  return Number.isFinite(ms) && Math.abs(ms) <= 8.64e15 ? new Date(ms).toISOString() : null;
}
