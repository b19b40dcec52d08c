import { Controller, Get, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { AnyStaff } from '../../platform/access/access.decorator.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { dayBounds } from '../../web/dates.ts';
import { type BaysView, presentBays } from './bays.presenter.ts';
import { JobsService } from './jobs.service.ts';

@ApiExcludeController()
@Controller('bays')
@AnyStaff()
export class BaysController {
  constructor(
    private readonly jobs: JobsService,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  @Get()
  @Render('features/bookings/views/bays.hbs')
  async bays(): Promise<BaysView> {
    const now = this.clock.now();
    const { timeZone } = await this.workshop.get();
    const lists = await this.jobs.ofDay(dayBounds(now, timeZone));
    return presentBays(lists, { now, timeZone, mayTakeCalls: currentStaff().role !== 'technician' });
  }
}
