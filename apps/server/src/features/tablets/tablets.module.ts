import { Module } from '@nestjs/common';
import { BookingsModule } from '../bookings/bookings.module.ts';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { PhotosModule } from '../photos/photos.module.ts';
import { StaffModule } from '../staff/staff.module.ts';
import { PinSignIns } from './pin-sign-in.service.ts';
import { TabletApiController } from './tablet-api.controller.ts';
import { TabletDays } from './tablet-day.service.ts';
import { TabletDoorController } from './tablet-door.controller.ts';
import { TabletIntake } from './tablet-intake.service.ts';
import { TabletPhotos } from './tablet-photos.service.ts';
import { TabletsController } from './tablets.controller.ts';
import { TabletsRepository } from './tablets.repository.ts';
import { Tablets } from './tablets.service.ts';

@Module({
  imports: [BookingsModule, JobCardsModule, PhotosModule, StaffModule],
  controllers: [TabletsController, TabletDoorController, TabletApiController],
  providers: [Tablets, TabletsRepository, PinSignIns, TabletIntake, TabletPhotos, TabletDays],
})
export class TabletsModule {}
