import type { CardState } from '#libs/checklist';
import { type FillAccount, fillAccount, pouredByStage, productFor } from '#libs/coolant';
import type { CardFact, CardProduct, CardWorkshop, ChosenVariant, EarlierTorque, KnownFigures } from '../card-known.ts';
import { type FillSoFar, fillSoFar } from './fill-so-far.ts';
import { type RefillRecipe, refillRecipe } from './refill-recipe.ts';
import { residualStrength, type ResidualStrength } from './residual-strength.ts';
import { traySizeL } from './tray-size.ts';

/** The figures of this car and this job that the steps of its card show. */
export interface CardFigures {
  /** What was stated of the capacity, newest first: differing statements stand side by side, the newest is reckoned with. */
  capacities: readonly CardFact[];
  capacityL: number | null;
  residual: ResidualStrength | null;
  product: CardProduct | null;
  technology: CardFact | null;
  fill: FillSoFar;
  recipe: RefillRecipe;
  account: FillAccount | null;
  trayL: number | null;
  torques: readonly CardFact[];
  earlierTorques: readonly EarlierTorque[];
  variant: ChosenVariant | null;
  jugMl: number;
  markMl: number;
  fillToleranceMl: number;
  topUpToleranceMl: number;
}

/** The figures of a card as it stands, the same on the server and on a tablet without a network. */
export function gatherFigures(state: CardState, { facts, products, workshop, variant, earlierTorques }: KnownFigures): CardFigures {
  const capacities = facts.filter(({ key, figure }) => key === 'capacity' && figure !== null && figure > 0);
  const capacityL = capacities[0]?.figure ?? null;
  const technology = facts.find(({ key }) => key === 'technology') ?? null;
  const product = productFor(products, technology?.words);
  const fill = fillSoFar(state);
  const residual = residualStrength(state, facts, fill.isOpenedAgain);
  const recipe = refillRecipe({
    capacityL,
    drainedL: fill.drainedL,
    missingL: fill.missingL ?? 0,
    keptL: fill.keptL,
    filledBeforeL: fill.filledBeforeL,
    residual: residual?.strength ?? null,
    product,
    target: { coldestAirC: workshop.coldestAirC, marginK: workshop.freezeMarginK },
    jugMl: workshop.jugMl,
    markMl: workshop.jugMarkMl,
  });
  return {
    capacities,
    capacityL,
    residual,
    product,
    technology,
    fill,
    recipe,
    account: accountOf(state, { fill, recipe, capacityL, workshop }),
    trayL: capacityL === null ? null : traySizeL(capacityL, fill.missingL ?? 0),
    torques: facts.filter(({ key }) => key === 'torque'),
    earlierTorques,
    variant,
    jugMl: workshop.jugMl,
    markMl: workshop.jugMarkMl,
    fillToleranceMl: workshop.fillToleranceMl,
    topUpToleranceMl: workshop.topUpToleranceMl,
  };
}

/** What came out against what went in; null where nothing was drained yet or the figures contradict each other. */
function accountOf(
  state: CardState,
  { fill, recipe, capacityL, workshop }: { fill: FillSoFar; recipe: RefillRecipe; capacityL: number | null; workshop: CardWorkshop },
): FillAccount | null {
  if (fill.drainedL === null) return null;
  const { fills } = fill;
  const found = fillAccount({
    systemVolumeL: fill.isOpenedAgain ? undefined : (capacityL ?? undefined),
    missingOnArrival: { volumeL: Math.max(0, fill.missingL ?? 0), isAbout: fill.isTankEmpty },
    drained: { volumeL: fill.drainedL, isAbout: fill.isDrainedAbout, keptL: state.facts.numbers['keptL']?.value },
    ...pouredByStage(fills),
    shrinkL: recipe.kind === 'ready' ? recipe.recipe.shrinkL : 0,
    tolerances: { shortfallL: workshop.fillToleranceMl / 1000, morningL: workshop.topUpToleranceMl / 1000 },
  });
  return found.ok ? found : null;
}
