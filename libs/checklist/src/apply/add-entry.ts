import { type Action } from '../actions/action.ts';
import { type CardState, type HistoryEntry, type StepState } from '../card/card-state.ts';
import { deriveStep } from '../card/derive-step.ts';
import { type EvidenceValue } from '../evidence/evidence-value.ts';
import { findStep } from '../template/steps-of.ts';

/** Puts an action into the history of its step, or of the card, and works the step out again. */
export function addEntry(card: CardState, action: Action, evidence: EvidenceValue | null = null): CardState {
  const state = stepState(card, action.step);
  const entry = toEntry(action, { order: card.received.length, round: state?.round ?? 0, evidence });
  if (!state) return { ...card, history: [...card.history, entry] };
  return withHistory(card, state, [...state.history, entry]);
}

export function withHistory(card: CardState, state: StepState, history: readonly HistoryEntry[]): CardState {
  const step = findStep(card.template, state.key);
  if (!step) return card;
  return { ...card, steps: { ...card.steps, [state.key]: deriveStep(step, state.round, history) } };
}

export function stepState(card: CardState, key: string): StepState | null {
  return Object.hasOwn(card.steps, key) ? (card.steps[key] ?? null) : null;
}

function toEntry(
  action: Action,
  { order, round, evidence }: { order: number; round: number; evidence: EvidenceValue | null },
): HistoryEntry {
  return {
    actionId: action.id,
    order,
    round,
    kind: action.kind,
    step: action.step,
    value: action.value,
    evidence,
    by: action.by,
    byProof: action.byProof,
    readAt: action.readAt,
    deviceId: action.deviceId ?? null,
    takenBack: null,
  };
}
