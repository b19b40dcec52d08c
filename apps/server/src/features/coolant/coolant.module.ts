import { Module } from '@nestjs/common';
import { BenchController } from './bench.controller.ts';
import { BenchService } from './bench.service.ts';
import { CoolantApiController } from './coolant-api.controller.ts';
import { ProductsRepository } from './products.repository.ts';
import { StaffUnitsRepository } from './units/staff-units.repository.ts';
import { UnitsService } from './units/units.service.ts';

@Module({
  controllers: [CoolantApiController, BenchController],
  providers: [BenchService, ProductsRepository, UnitsService, StaffUnitsRepository],
})
export class CoolantModule {}
