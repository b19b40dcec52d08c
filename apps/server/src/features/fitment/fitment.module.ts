import { Module } from '@nestjs/common';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { ReturnsModule } from '../returns/returns.module.ts';
import { BenchController } from './bench.controller.ts';
import { BenchRepository } from './bench.repository.ts';
import { BenchService } from './bench.service.ts';
import { FitmentApiController } from './fitment-api.controller.ts';
import { PartFamilies } from './part-families.service.ts';

@Module({
  imports: [JobCardsModule, ReturnsModule],
  controllers: [BenchController, FitmentApiController],
  providers: [BenchRepository, BenchService, PartFamilies],
})
export class FitmentModule {}
