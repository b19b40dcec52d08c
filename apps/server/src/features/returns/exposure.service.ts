import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import { ExposureRepository, type ExposureRow } from './exposure.repository.ts';

export type { ExposureRow } from './exposure.repository.ts';

const SOON_DAYS = 7;

/** Which money lies at which supplier, since when, and what of it is late or must leave soon. */
@Injectable()
export class Exposure {
  constructor(
    private readonly rows: ExposureRepository,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  async bySupplier(): Promise<ExposureRow[]> {
    const { timeZone } = await this.workshop.get();
    return this.rows.bySupplier({ today: isoDay(this.clock.now(), timeZone), timeZone, soonDays: SOON_DAYS });
  }
}
