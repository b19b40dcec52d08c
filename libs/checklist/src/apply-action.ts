import { type Action, WHOLE_CARD } from './actions/action.ts';
import { canonicalText } from './actions/canonical-text.ts';
import { readAction } from './actions/read-action.ts';
import { addRemark } from './apply/add-remark.ts';
import { confirmName } from './apply/confirm-name.ts';
import { goBack } from './apply/go-back.ts';
import { letGo } from './apply/let-go.ts';
import { markNotApplicable } from './apply/mark-not-applicable.ts';
import { type Misfit, misfit, type Outcome } from './apply/outcome.ts';
import { passWithout } from './apply/pass-without.ts';
import { pourJug } from './apply/pour-jug.ts';
import { recordEvidence } from './apply/record-evidence.ts';
import { runTimer } from './apply/run-timer.ts';
import { settleDifference } from './apply/settle-difference.ts';
import { takeBack } from './apply/take-back.ts';
import { stepState } from './apply/add-entry.ts';
import { type CardState, type StepState } from './card/card-state.ts';
import { settleCard } from './card/settle-card.ts';
import { findStep } from './template/steps-of.ts';
import { type Step } from './template/template.ts';
import { fieldsOf } from './words/fields.ts';

/**
 * Applies one action to a card. The same action twice changes nothing; an action that no longer fits, or can't be
 * understood, is kept among the differences for a person. Never throws.
 *
 * @param card The card as it stands
 * @param raw The action as it arrived
 * @returns The card after it
 * @example applyAction(emptyCard(THERMOSTAT_JOB), 'garbage').differences.length // 1
 */
export function applyAction(card: CardState, raw: unknown): CardState {
  const text = canonicalText(raw);
  const id = fieldsOf(raw)['id'];
  const known = typeof id === 'string' ? card.received.filter((one) => one.id === id) : [];
  if (known.some((one) => one.text === text)) return card;
  const received = typeof id === 'string' ? [...card.received, { id, text }] : card.received;
  const outcome = known.length > 0 ? misfit('same-id', 'Another action came earlier under the same number.') : readAndApply(card, raw);
  const next = outcome.card ?? card;
  const differences = outcome.misfit ? [...next.differences, toDifference(raw, id, outcome.misfit)] : next.differences;
  return settleCard({ ...next, received, differences });
}

function toDifference(raw: unknown, id: unknown, { code, why }: Misfit): CardState['differences'][number] {
  return { actionId: typeof id === 'string' ? id : null, action: raw, code, why, settled: null };
}

function readAndApply(card: CardState, raw: unknown): Outcome {
  const read = readAction(raw);
  if (!read.ok) return misfit('not-understood', read.why);
  const action = read.value;
  const step = findStep(card.template, action.step);
  const state = stepState(card, action.step);
  if (step && state) return applyToStep(card, action, { step, state });
  const isPlace = action.step === WHOLE_CARD || card.template.phases.some((phase) => phase.key === action.step);
  return isPlace ? applyBeside(card, action) : misfit('unknown-step', `This card has no step '${action.step}'.`);
}

function applyToStep(card: CardState, action: Action, at: { step: Step; state: StepState }): Outcome {
  switch (action.kind) {
    case 'tick':
    case 'record':
    case 'pass':
      return recordEvidence(card, action, at);
    case 'pass-without':
      return passWithout(card, action, at);
    case 'not-applicable':
      return markNotApplicable(card, action, at);
    case 'let-go':
      return letGo(card, action, at);
    case 'pour-jug':
      return pourJug(card, action, at);
    case 'start-timer':
    case 'stop-timer':
    case 'take-back':
    case 'note':
    case 'photo':
    case 'finding':
    case 'wait':
    case 'wait-over':
    case 'go-back':
    case 'confirm-name':
    case 'settle-difference':
      return applyBeside(card, action);
  }
}

function applyBeside(card: CardState, action: Action): Outcome {
  switch (action.kind) {
    case 'start-timer':
    case 'stop-timer':
      return runTimer(card, action);
    case 'take-back':
      return takeBack(card, action);
    case 'note':
    case 'photo':
    case 'finding':
    case 'wait':
    case 'wait-over':
      return addRemark(card, action, action.kind);
    case 'go-back':
      return goBack(card, action);
    case 'confirm-name':
      return confirmName(card, action);
    case 'settle-difference':
      return settleDifference(card, action);
    case 'tick':
    case 'record':
    case 'pass':
    case 'pass-without':
    case 'not-applicable':
    case 'let-go':
    case 'pour-jug':
      return misfit('wrong-kind', `'${action.kind}' belongs to a step, not to '${action.step}'.`);
  }
}
