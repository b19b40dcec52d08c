import { Injectable } from '@nestjs/common';
import type { CardState } from '#libs/checklist';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { CoolantShelf } from '../coolant-shelf/coolant-shelf.service.ts';
import { VehicleFacts } from '../customers/vehicle-facts.service.ts';
import { CardFiguresRepository } from './card-figures.repository.ts';
import { type CardFigures, gatherFigures } from './card-figures/gather-figures.ts';
import type { CardFactDto } from './dto/card-fact.dto.ts';
import { badForm, noCard } from './job-cards.errors.ts';
import type { CardRow, KnownFigures } from './card-known.ts';
import { JobCardsRepository } from './job-cards.repository.ts';

const ON_THE_CARD = ['capacity', 'strength', 'freezing-point', 'technology', 'torque'];

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
    return gatherFigures(state, await this.known(row));
  }

  /** What the figures of a card are gathered from, beside its actions. */
  async known({ id, vehicleId, vehicle }: CardRow): Promise<KnownFigures> {
    const [facts, products, variant, earlierTorques, workshop] = await Promise.all([
      this.facts.of(vehicleId, ON_THE_CARD),
      this.products.onTheShelf(),
      this.figures.variant(id),
      this.figures.earlierTorques({ id, vehicleId, engineCode: vehicle.engineCode }),
      this.workshop.get(),
    ]);
    return { facts, products, variant, earlierTorques, workshop };
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
