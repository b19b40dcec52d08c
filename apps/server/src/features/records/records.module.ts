import { Module } from '@nestjs/common';
import { OfficeController } from './office.controller.ts';
import { RecordsRepository } from './records.repository.ts';
import { WorkshopController } from './workshop.controller.ts';
import { WorkshopService } from './workshop.service.ts';

@Module({ controllers: [OfficeController, WorkshopController], providers: [RecordsRepository, WorkshopService] })
export class RecordsModule {}
