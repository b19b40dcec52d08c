import { Module } from '@nestjs/common';
import { AnalysesApiController } from './analyses-api.controller.ts';

@Module({
  controllers: [AnalysesApiController],
})
export class WarmUpModule {}
