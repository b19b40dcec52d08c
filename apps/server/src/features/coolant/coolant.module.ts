import { Module } from '@nestjs/common';
import { CoolantShelfModule } from '../coolant-shelf/coolant-shelf.module.ts';
import { CustomersModule } from '../customers/customers.module.ts';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { BenchController } from './bench.controller.ts';
import { BenchService } from './bench.service.ts';
import { CoolantApiController } from './coolant-api.controller.ts';
import { CoolantJobApiController } from './coolant-job-api.controller.ts';
import { BenchJobsRepository } from './job/bench-jobs.repository.ts';
import { CardPeopleRepository } from './job/card-people.repository.ts';
import { JobBenchController } from './job/job-bench.controller.ts';
import { JobBenchService } from './job/job-bench.service.ts';
import { StaffUnitsRepository } from './units/staff-units.repository.ts';
import { UnitsService } from './units/units.service.ts';

@Module({
  imports: [CoolantShelfModule, CustomersModule, JobCardsModule],
  controllers: [CoolantApiController, CoolantJobApiController, BenchController, JobBenchController],
  providers: [BenchService, BenchJobsRepository, JobBenchService, CardPeopleRepository, UnitsService, StaffUnitsRepository],
})
export class CoolantModule {}
