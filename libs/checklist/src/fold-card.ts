import { applyAction } from './apply-action.ts';
import { type CardSetting, type CardState } from './card/card-state.ts';
import { emptyCard } from './card/empty-card.ts';
import { type Template } from './template/template.ts';

/**
 * The card that a list of actions makes, in the order the server received them.
 *
 * @param template The job's template
 * @param actions Actions in order of receipt; anything may be among them
 * @param setting One-person site or not; the stage the desk has the job at
 * @returns The card
 * @example foldCard(THERMOSTAT_JOB, []).stage // 'expected'
 */
export function foldCard(template: Template, actions: readonly unknown[], setting: Partial<CardSetting> = {}): CardState {
  return actions.reduce<CardState>((card, action) => applyAction(card, action), emptyCard(template, setting));
}
