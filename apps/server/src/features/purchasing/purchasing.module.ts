import { Module } from '@nestjs/common';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { ReturnsModule } from '../returns/returns.module.ts';
import { OrdersController } from './orders.controller.ts';
import { OrdersRepository } from './orders.repository.ts';
import { Orders } from './orders.service.ts';
import { PartWait } from './part-wait.service.ts';
import { SuppliersController } from './suppliers.controller.ts';
import { SuppliersRepository } from './suppliers.repository.ts';
import { SuppliersService } from './suppliers.service.ts';
import { VariantsController } from './variants.controller.ts';
import { VariantsRepository } from './variants.repository.ts';
import { Variants } from './variants.service.ts';

@Module({
  imports: [JobCardsModule, ReturnsModule],
  controllers: [SuppliersController, VariantsController, OrdersController],
  providers: [SuppliersService, SuppliersRepository, Variants, VariantsRepository, Orders, OrdersRepository, PartWait],
  exports: [Variants, Orders],
})
export class PurchasingModule {}
