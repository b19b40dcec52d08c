import { Module } from '@nestjs/common';
import { CounterController } from './counter.controller.ts';
import { CustomersApiController } from './customers-api.controller.ts';
import { CustomersRepository } from './customers.repository.ts';
import { CustomersService } from './customers.service.ts';
import { VehicleFacts } from './vehicle-facts.service.ts';
import { VehiclesApiController } from './vehicles-api.controller.ts';
import { VehiclesController } from './vehicles.controller.ts';
import { VehiclesRepository } from './vehicles.repository.ts';
import { VehiclesService } from './vehicles.service.ts';

@Module({
  controllers: [CounterController, CustomersApiController, VehiclesApiController, VehiclesController],
  providers: [CustomersService, CustomersRepository, VehiclesService, VehiclesRepository, VehicleFacts],
  exports: [CustomersService, VehiclesService, VehicleFacts],
})
export class CustomersModule {}
