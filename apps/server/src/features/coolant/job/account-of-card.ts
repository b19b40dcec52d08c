import type { CardState, Fill, FillStage } from '#libs/checklist';
import { type FillAccount, fillAccount, type Outcome, type Poured } from '#libs/coolant';
import type { Workshop } from '../../../platform/workshop-facts.ts';
import { isOpenedAgain } from './known-figures.ts';

const ML_PER_L = 1000;

/** Everything that was poured at one stage, or undefined where nothing was. */
export function pouredAt(fills: readonly Fill[], stage: FillStage): Poured | undefined {
  const own = fills.filter((fill) => fill.stage === stage);
  if (own.length === 0) return undefined;
  const litres = (amount: (fill: Fill) => number): number => own.reduce((sum, fill) => sum + amount(fill), 0) / ML_PER_L;
  return {
    volumeL: litres(({ productMl, waterMl, keptMl }) => productMl + waterMl + keptMl),
    productL: litres(({ productMl }) => productMl),
    keptL: litres(({ keptMl }) => keptMl),
    isAbout: own.some(({ about }) => about),
  };
}

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
    firstFill: pouredAt(fills, 'first-fill'),
    afterShortRun: pouredAt(fills, 'after-short-run'),
    afterRunHot: pouredAt(fills, 'after-run-hot'),
    nextMorning: pouredAt(fills, 'next-morning'),
    shrinkL,
    tolerances: { shortfallL: workshop.fillToleranceMl / ML_PER_L, morningL: workshop.topUpToleranceMl / ML_PER_L },
  });
}
