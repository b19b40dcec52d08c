import { stepsOf } from '../template/steps-of.ts';
import { type Step } from '../template/template.ts';
import { canDo } from './can-do.ts';
import { type CardState } from './card-state.ts';

/**
 * The steps still to do, in the order of the card. Those that can't be done yet stay in the list; the first that can is
 * the one to show large.
 *
 * @param card The card as it stands
 * @returns Open steps with whether each can be done now
 * @example nextSteps(emptyCard(THERMOSTAT_JOB))[0].step.key // 'keys-tagged'
 */
export function nextSteps(card: CardState): readonly { readonly step: Step; readonly can: boolean }[] {
  return stepsOf(card.template)
    .filter((step) => card.steps[step.key]?.state === 'open' || card.steps[step.key]?.state === 'taken-back')
    .map((step) => ({ step, can: canDo(card, step.key).can }));
}
