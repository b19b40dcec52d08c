import { Module } from '@nestjs/common';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { ExposureRepository } from './exposure.repository.ts';
import { Exposure } from './exposure.service.ts';
import { Labels } from './labels.service.ts';
import { ReleaseRepository } from './release.repository.ts';
import { ReturnNotesController } from './return-notes.controller.ts';
import { ReturnNotesRepository } from './return-notes.repository.ts';
import { ReturnNotes } from './return-notes.service.ts';
import { SetAsideRelease } from './set-aside-release.service.ts';
import { ShelfController } from './shelf.controller.ts';
import { ShelfRepository } from './shelf.repository.ts';
import { ShelfService } from './shelf.service.ts';
import { UnitActs } from './unit-acts.service.ts';
import { UnitsController } from './units.controller.ts';
import { UnitsRepository } from './units.repository.ts';
import { Units } from './units.service.ts';

@Module({
  imports: [JobCardsModule],
  controllers: [ShelfController, UnitsController, ReturnNotesController],
  providers: [
    Units,
    UnitActs,
    UnitsRepository,
    ReturnNotes,
    ReturnNotesRepository,
    Labels,
    Exposure,
    ExposureRepository,
    SetAsideRelease,
    ReleaseRepository,
    ShelfService,
    ShelfRepository,
  ],
  exports: [Exposure, Units, UnitActs, SetAsideRelease],
})
export class ReturnsModule {}
