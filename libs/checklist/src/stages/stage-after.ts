import { type CardState, type Debt } from '../card/card-state.ts';
import { type Stage } from './stages.ts';

/**
 * The stage of a job once everything that is owed is known: keys out becomes squared when nothing is owed either way, and
 * goes back to keys out when something is. Nobody sets it by hand.
 *
 * @param card The card as it stands
 * @param otherDebts What is owed beside the card: money, units and claims, old parts, warranty claims
 * @returns The stage
 * @example stageAfter(emptyCard(THERMOSTAT_JOB)) // 'expected'
 */
export function stageAfter(card: CardState, otherDebts: readonly Pick<Debt, 'state'>[] = []): Stage {
  if (card.stage !== 'keys-out') return card.stage;
  const isOwed = [...card.debts, ...otherDebts].some((debt) => debt.state === 'open');
  return isOwed ? 'keys-out' : 'squared';
}
