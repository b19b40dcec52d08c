import { Module } from '@nestjs/common';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { WarmUpModule } from '../warm-up/warm-up.module.ts';
import { DocumentsService } from './documents.service.ts';
import { DraftsService } from './drafts.service.ts';
import { InvoicesApiController } from './invoices-api.controller.ts';
import { InvoicesRepository } from './invoices.repository.ts';
import { IssueService } from './issue.service.ts';
import { JobBillRepository } from './job-bill.repository.ts';
import { PaymentsService } from './payments.service.ts';
import { TillSettingsController } from './settings/till-settings.controller.ts';
import { TillSettingsRepository } from './settings/till-settings.repository.ts';
import { TillSettingsService } from './settings/till-settings.service.ts';
import { TillController } from './till.controller.ts';

@Module({
  imports: [JobCardsModule, WarmUpModule],
  controllers: [InvoicesApiController, TillController, TillSettingsController],
  providers: [
    DocumentsService,
    DraftsService,
    InvoicesRepository,
    IssueService,
    JobBillRepository,
    PaymentsService,
    TillSettingsRepository,
    TillSettingsService,
  ],
  exports: [DraftsService],
})
export class InvoicesModule {}
