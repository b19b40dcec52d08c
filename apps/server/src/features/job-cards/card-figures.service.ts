import { Injectable } from '@nestjs/common';
import type { CardState } from '#libs/checklist';
import { type FillAccount, fillAccount, pouredByStage } from '#libs/coolant';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { type Workshop, WorkshopFacts } from '../../platform/workshop-facts.ts';
import { CoolantShelf, type ShelfProduct } from '../coolant-shelf/coolant-shelf.service.ts';
import { type StatedFact, VehicleFacts } from '../customers/vehicle-facts.service.ts';
import { CardFiguresRepository, type ChosenVariant, type EarlierTorque } from './card-figures.repository.ts';
import { type FillSoFar, fillSoFar } from './card-figures/fill-so-far.ts';
import { type RefillRecipe, refillRecipe } from './card-figures/refill-recipe.ts';
import { residualStrength, type ResidualStrength } from './card-figures/residual-strength.ts';
import { traySizeL } from './card-figures/tray-size.ts';
import type { CardFactDto } from './dto/card-fact.dto.ts';
import { badForm, noCard } from './job-cards.errors.ts';
import { type CardRow, JobCardsRepository } from './job-cards.repository.ts';

const ON_THE_CARD = ['capacity', 'strength', 'freezing-point', 'technology', 'torque'];

/** The figures of this car and this job that the steps of its card show. */
export interface CardFigures {
  /** What was stated of the capacity, newest first: differing statements stand side by side, the newest is reckoned with. */
  capacities: readonly StatedFact[];
  capacityL: number | null;
  residual: ResidualStrength | null;
  product: ShelfProduct | null;
  technology: StatedFact | null;
  fill: FillSoFar;
  recipe: RefillRecipe;
  account: FillAccount | null;
  trayL: number | null;
  torques: readonly StatedFact[];
  earlierTorques: readonly EarlierTorque[];
  variant: ChosenVariant | null;
  jugMl: number;
  markMl: number;
  fillToleranceMl: number;
  topUpToleranceMl: number;
}

@Injectable()
export class CardFiguresService {
  constructor(
    private readonly figures: CardFiguresRepository,
    private readonly facts: VehicleFacts,
    private readonly products: CoolantShelf,
    private readonly cards: JobCardsRepository,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
  ) {}

  async of(row: CardRow, state: CardState): Promise<CardFigures> {
    const { id, vehicleId, vehicle } = row;
    const [facts, products, variant, earlierTorques, workshop] = await Promise.all([
      this.facts.of(vehicleId, ON_THE_CARD),
      this.products.onTheShelf(),
      this.figures.variant(id),
      this.figures.earlierTorques({ id, vehicleId, engineCode: vehicle.engineCode }),
      this.workshop.get(),
    ]);
    return gather(state, { facts, products, workshop, variant, earlierTorques });
  }

  /** What somebody read or looked up, with where: beside what was stated before, never over it. */
  async state(jobId: string, { key, figure, words, source }: CardFactDto): Promise<void> {
    const row = await this.cards.find(jobId);
    if (!row) throw noCard();
    const typed = Math.abs(Number(figure.replace('\u2212', '-').replace(',', '.')));
    if (key === 'capacity' && typed === 0)
      throw badForm([{ field: 'figure', message: 'A system holds more than nothing: type its litres.' }]);
    await this.unitOfWork.run(async (tx) =>
      this.facts.state(tx, {
        vehicleId: row.vehicleId,
        jobId,
        key,
        figure: key === 'freezing-point' ? -typed : typed,
        unit: key === 'capacity' ? 'L' : '°C',
        words,
        source,
      }),
    );
  }
}

interface Known {
  facts: readonly StatedFact[];
  products: readonly ShelfProduct[];
  workshop: Workshop;
  variant: ChosenVariant | null;
  earlierTorques: readonly EarlierTorque[];
}

function gather(state: CardState, { facts, products, workshop, variant, earlierTorques }: Known): CardFigures {
  const capacities = facts.filter(({ key, figure }) => key === 'capacity' && figure !== null && figure > 0);
  const capacityL = capacities[0]?.figure ?? null;
  const technology = facts.find(({ key }) => key === 'technology') ?? null;
  const product = products.find((one) => one.technology === technology?.words) ?? products[0] ?? null;
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
  { fill, recipe, capacityL, workshop }: { fill: FillSoFar; recipe: RefillRecipe; capacityL: number | null; workshop: Workshop },
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
