import { Injectable } from '@nestjs/common';
import { findStep, type Step } from '#libs/checklist';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { CardFiguresRepository } from './card-figures.repository.ts';
import { CardFiguresService } from './card-figures.service.ts';
import type { CardPage } from './card-page/card-view.types.ts';
import { leadingStep } from './card-page/leading-step.ts';
import { unknownStep } from './job-cards.errors.ts';
import { JobCardsRepository } from './job-cards.repository.ts';
import { JobCards, type OpenCard } from './job-cards.service.ts';

/** Everything that the page of a card shows. */
@Injectable()
export class CardPages {
  constructor(
    private readonly cards: JobCards,
    private readonly rows: JobCardsRepository,
    private readonly figures: CardFiguresService,
    private readonly received: CardFiguresRepository,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  /** `stepKey` left out: the step to do next. @throws unknown-step where the card has none of that key. */
  async page(jobId: string, stepKey: string | undefined): Promise<Omit<CardPage, 'formState'>> {
    const { row, state } = await this.cards.open(jobId);
    const step = stepKey === undefined ? leadingStep(state) : known(findStep(state.template, stepKey));
    const [figures, names, { timeZone }, lastReceived] = await Promise.all([
      this.figures.of(row, state),
      this.rows.staffNames(),
      this.workshop.get(),
      this.received.lastReceived(jobId),
    ]);
    const { staffId, role } = currentStaff();
    return { row, state, step, figures, names, staff: { staffId, role }, now: this.clock.now(), timeZone, lastReceived };
  }

  /** The card for a program, with who is who. */
  async card(jobId: string): Promise<OpenCard & { names: ReadonlyMap<string, string> }> {
    const [open, names] = await Promise.all([this.cards.open(jobId), this.rows.staffNames()]);
    return { ...open, names };
  }
}

function known(step: Step | null): Step {
  if (!step) throw unknownStep();
  return step;
}
