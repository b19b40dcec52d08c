import { Module } from '@nestjs/common';
import { CardLedgers } from './card-ledgers.repository.ts';
import { JobAccountRepository } from './job-account.repository.ts';
import { JobAccount } from './job-account.service.ts';
import { JobCardsRepository } from './job-cards.repository.ts';
import { JobCards } from './job-cards.service.ts';
import { JobStages } from './job-stages.service.ts';
import { Templates } from './templates.service.ts';

@Module({
  providers: [JobCards, JobCardsRepository, CardLedgers, JobStages, JobAccount, JobAccountRepository, Templates],
  exports: [JobCards, JobStages, JobAccount],
})
export class JobCardsModule {}
