import { Module } from '@nestjs/common';
import { FitmentApiController } from './fitment-api.controller.ts';
import { PartFamilies } from './part-families.service.ts';

@Module({ controllers: [FitmentApiController], providers: [PartFamilies] })
export class FitmentModule {}
