import { type CardState } from '../card/card-state.ts';
import { isComplete } from '../card/derive-step.ts';
import { type HoldKey } from '../holds/holds.ts';
import { stepsOf } from '../template/steps-of.ts';
import { type Step } from '../template/template.ts';

/** The steps a hold point protects that have been done, or begun, this time round. */
export function stepsDoneBehind(card: CardState, hold: HoldKey): readonly Step[] {
  return stepsOf(card.template).filter((step) => {
    const isBehind = step.behind?.includes(hold) === true || step.behindOnceOpened?.includes(hold) === true;
    const state = card.steps[step.key];
    if (!isBehind || !state) return false;
    return (
      isComplete(state.state) || state.history.some((entry) => entry.round === state.round && !entry.takenBack && BEGINS.has(entry.kind))
    );
  });
}

const BEGINS: ReadonlySet<string> = new Set(['pour-jug', 'start-timer', 'stop-timer']);
