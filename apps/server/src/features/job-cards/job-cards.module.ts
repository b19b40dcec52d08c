import { Module } from '@nestjs/common';
import { CoolantShelfModule } from '../coolant-shelf/coolant-shelf.module.ts';
import { PhotosModule } from '../photos/photos.module.ts';
import { CustomersModule } from '../customers/customers.module.ts';
import { CardActs } from './card-acts.service.ts';
import { CardApiController } from './card-api.controller.ts';
import { CardFiguresRepository } from './card-figures.repository.ts';
import { CardFiguresService } from './card-figures.service.ts';
import { CardIntake } from './card-intake.service.ts';
import { CardFollowers } from './card-followers.service.ts';
import { CardLedgers } from './card-ledgers.repository.ts';
import { CardController } from './card.controller.ts';
import { CardSheets } from './card-sheets.service.ts';
import { CardPages } from './card-page.service.ts';
import { JobAccountRepository } from './job-account.repository.ts';
import { JobAccount } from './job-account.service.ts';
import { JobCardsRepository } from './job-cards.repository.ts';
import { JobCards } from './job-cards.service.ts';
import { JobStages } from './job-stages.service.ts';
import { Templates } from './templates.service.ts';

@Module({
  imports: [CoolantShelfModule, CustomersModule, PhotosModule],
  controllers: [CardController, CardApiController],
  providers: [
    JobCards,
    JobCardsRepository,
    CardFollowers,
    CardLedgers,
    JobStages,
    JobAccount,
    JobAccountRepository,
    Templates,
    CardActs,
    CardIntake,
    CardPages,
    CardSheets,
    CardFiguresService,
    CardFiguresRepository,
  ],
  exports: [JobCards, CardFollowers, CardIntake, CardSheets, JobStages, JobAccount, CardFiguresService],
})
export class JobCardsModule {}
