import { Module } from '@nestjs/common';
import { ReturnsModule } from '../returns/returns.module.ts';
import { OrdersController } from './orders.controller.ts';
import { OrdersRepository } from './orders.repository.ts';
import { Orders } from './orders.service.ts';
import { SuppliersController } from './suppliers.controller.ts';
import { SuppliersRepository } from './suppliers.repository.ts';
import { SuppliersService } from './suppliers.service.ts';
import { VariantsController } from './variants.controller.ts';
import { VariantsRepository } from './variants.repository.ts';
import { Variants } from './variants.service.ts';

@Module({
  imports: [ReturnsModule],
  controllers: [SuppliersController, VariantsController, OrdersController],
  providers: [SuppliersService, SuppliersRepository, Variants, VariantsRepository, Orders, OrdersRepository],
  exports: [Variants, Orders],
})
export class PurchasingModule {}
