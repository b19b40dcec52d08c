import { Module } from '@nestjs/common';
import { CustomersModule } from '../customers/customers.module.ts';
import { EstimatesModule } from '../estimates/estimates.module.ts';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { BaysController } from './bays.controller.ts';
import { BookingsRepository } from './bookings.repository.ts';
import { BookingsService } from './bookings.service.ts';
import { JobsController } from './jobs.controller.ts';
import { JobsRepository } from './jobs.repository.ts';
import { JobsService } from './jobs.service.ts';

@Module({
  imports: [CustomersModule, EstimatesModule, JobCardsModule],
  controllers: [BaysController, JobsController],
  providers: [BookingsRepository, BookingsService, JobsRepository, JobsService],
  exports: [JobsService],
})
export class BookingsModule {}
