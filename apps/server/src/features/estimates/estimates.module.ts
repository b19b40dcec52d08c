import { Module } from '@nestjs/common';
import { EstimatesController } from './estimates.controller.ts';
import { EstimatesRepository } from './estimates.repository.ts';
import { EstimatesService } from './estimates.service.ts';

@Module({
  controllers: [EstimatesController],
  providers: [EstimatesService, EstimatesRepository],
  exports: [EstimatesService],
})
export class EstimatesModule {}
