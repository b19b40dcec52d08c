import { Module } from '@nestjs/common';
import { ReturnsModule } from '../returns/returns.module.ts';
import { SupplierDocumentsModule } from '../supplier-documents/supplier-documents.module.ts';
import { MoneyController } from './money.controller.ts';
import { MoneyRepository } from './money.repository.ts';
import { Money } from './money.service.ts';

@Module({ imports: [ReturnsModule, SupplierDocumentsModule], controllers: [MoneyController], providers: [Money, MoneyRepository] })
export class SupplierMoneyModule {}
