import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import type { BenchContext } from './bench-context.ts';
import { ProductsRepository } from './products.repository.ts';
import { unitsOf } from './units/units-of.ts';

@Injectable()
export class BenchService {
  constructor(
    private readonly workshop: WorkshopFacts,
    private readonly products: ProductsRepository,
    private readonly clock: Clock,
  ) {}

  /** Settings, shelf, this person's units and today. */
  async context(): Promise<BenchContext> {
    const [workshop, products] = await Promise.all([this.workshop.get(), this.products.onTheShelf()]);
    return { workshop, products, units: unitsOf(currentStaff().units), today: isoDay(this.clock.now(), workshop.timeZone) };
  }
}
