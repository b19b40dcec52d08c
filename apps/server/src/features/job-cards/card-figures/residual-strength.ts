import type { CardState } from '#libs/checklist';
import type { StrengthInput } from '#libs/coolant';
import type { CardFact } from '../card-known.ts';

export interface ResidualStrength {
  readonly strength: StrengthInput;
  readonly said: string;
}

/**
 * How strong the coolant is that stays in the block: read on this card, else as it was stated for the car. After the system
 * was opened again only a reading of this card's mixture counts.
 */
export function residualStrength(state: CardState, facts: readonly CardFact[], isOpenedAgain: boolean): ResidualStrength | null {
  const { numbers } = state.facts;
  const read = numbers[isOpenedAgain ? 'strengthFreezingC' : 'strengthBeforeC'];
  if (read) return { strength: { freezingPointC: read.value }, said: 'read on this card' };
  if (isOpenedAgain) return null;
  const stated = facts.find(({ key, figure }) => (key === 'freezing-point' || key === 'strength') && figure !== null);
  if (stated?.figure == null) return null;
  const strength = stated.key === 'freezing-point' ? { freezingPointC: stated.figure } : { volumePercent: stated.figure };
  return { strength, said: stated.source };
}
