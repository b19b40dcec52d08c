import type { CardState } from '#libs/checklist';
import { type FillAccount, fillAccount, type Outcome, pouredByStage } from '#libs/coolant';
import type { Workshop } from '../../../platform/workshop-facts.ts';
import { isOpenedAgain } from './known-figures.ts';

const ML_PER_L = 1000;

/** The card's volumes, out and in, over every time the system was opened. Undefined while nothing was drained. */
export function accountOfCard(
  state: CardState,
  { capacityL, shrinkL, workshop }: { capacityL: number | undefined; shrinkL: number; workshop: Workshop },
): Outcome<FillAccount> | undefined {
  const { numbers, levels, fills } = state.facts;
  const { drainedL, keptL, missingOnArrivalL } = numbers;
  if (!drainedL) return undefined;
  return fillAccount({
    systemVolumeL: isOpenedAgain(state) ? undefined : capacityL,
    missingOnArrival: { volumeL: Math.max(0, missingOnArrivalL?.value ?? 0), isAbout: levels['missingOnArrivalL'] === null },
    drained: { volumeL: drainedL.value, isAbout: drainedL.about, keptL: keptL?.value },
    ...pouredByStage(fills),
    shrinkL,
    tolerances: { shortfallL: workshop.fillToleranceMl / ML_PER_L, morningL: workshop.topUpToleranceMl / ML_PER_L },
  });
}
