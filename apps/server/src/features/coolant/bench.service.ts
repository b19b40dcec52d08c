import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import type { BenchContext } from './bench-context.ts';
import { type BenchJob, BenchJobsRepository } from './job/bench-jobs.repository.ts';
import { CoolantShelf } from '../coolant-shelf/coolant-shelf.service.ts';
import { unitsOf } from './units/units-of.ts';

@Injectable()
export class BenchService {
  constructor(
    private readonly workshop: WorkshopFacts,
    private readonly products: CoolantShelf,
    private readonly jobs: BenchJobsRepository,
    private readonly clock: Clock,
  ) {}

  /** Settings, shelf, this person's units and today. */
  async context(): Promise<BenchContext> {
    const [workshop, products] = await Promise.all([this.workshop.get(), this.products.onTheShelf()]);
    return { workshop, products, units: unitsOf(currentStaff().units), today: isoDay(this.clock.now(), workshop.timeZone) };
  }

  /** Cars in the house, for which the bench can be opened with their own figures. */
  carsHere(): Promise<BenchJob[]> {
    return this.jobs.inTheHouse();
  }
}
