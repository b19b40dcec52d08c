import { type Action } from '../actions/action.ts';
import { canonicalText } from '../actions/canonical-text.ts';
import { obstacles } from '../card/can-do.ts';
import { type CardState, type StepState } from '../card/card-state.ts';
import { isComplete } from '../card/derive-step.ts';
import { type EvidenceValue } from '../evidence/evidence-value.ts';
import { judgeEvidence } from '../evidence/judge-evidence.ts';
import { readEvidence } from '../evidence/read-evidence.ts';
import { type Step } from '../template/template.ts';
import { type Read, understood } from '../words/read.ts';
import { addEntry } from './add-entry.ts';
import { misfit, type Outcome } from './outcome.ts';
import { stepsDoneBehind } from './steps-done-behind.ts';

/**
 * A tick, a reading, or a hold point's evidence. The same said twice agrees; something else on a step that is done is a
 * difference. On a hold point the latest evidence counts as long as nothing behind it has been done.
 */
export function recordEvidence(card: CardState, action: Action, { step, state }: { step: Step; state: StepState }): Outcome {
  const read = readFor(action, step);
  if (!read.ok) return misfit('bad-value', `${step.title}: ${read.why}`);
  const blocked = obstacles(card, step);
  if (blocked[0]) return misfit(blocked[0].code, `${step.title}: ${blocked[0].why}`);
  if (state.state === 'not-applicable' || state.state === 'let-go') {
    return misfit('already-done', `${step.title}: ${state.by ?? 'someone'} has said it isn't needed on this car.`);
  }
  if (isComplete(state.state) && !agrees(state, read.value) && !mayReplace(card, step, { state, value: read.value })) {
    return misfit('already-done', `${step.title}: already recorded by ${state.by ?? 'someone'} with something else. Take one back.`);
  }
  if (read.value.kind === 'fill' && hasJugs(state)) {
    return misfit(
      'already-done',
      `${step.title}: jugs have been poured here. Pour what is missing as a jug, or close the step with a tick.`,
    );
  }
  const next = addEntry(card, action, read.value);
  const after = next.steps[step.key];
  if (action.kind === 'pass' && after && !isComplete(after.state)) {
    return {
      card: next,
      misfit: { code: 'hold-not-passed', why: `${step.title}: kept, but the hold point stays shut. ${after.why ?? ''}`.trim() },
    };
  }
  return { card: next };
}

/** Jugs are closed by a tick; a fill that did not come from jugs is recorded with its amounts. */
function readFor(action: Action, step: Step): Read<EvidenceValue> {
  if (step.evidence.kind === 'jugs' && action.kind === 'tick') return understood({ kind: 'tick' });
  return readEvidence(step.evidence, action.value);
}

function agrees(state: StepState, value: EvidenceValue): boolean {
  return canonicalText(state.value) === canonicalText(value);
}

/** A hold point takes a newer reading while nothing behind it is done, once the old one is spent, or in place of a mere reason. */
function mayReplace(card: CardState, step: Step, { state, value }: { state: StepState; value: EvidenceValue }): boolean {
  if (step.hold === undefined) return false;
  if (card.holds[step.hold]?.spent === true || stepsDoneBehind(card, step.hold).length === 0) return true;
  return state.state === 'passed-without' && judgeEvidence(step, value).passes;
}

function hasJugs(state: StepState): boolean {
  return state.history.some((entry) => entry.kind === 'pour-jug' && entry.round === state.round && entry.takenBack === null);
}
