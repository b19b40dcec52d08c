import { Module } from '@nestjs/common';
import { CoolantShelfModule } from '../coolant-shelf/coolant-shelf.module.ts';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { WarmUpModule } from '../warm-up/warm-up.module.ts';
import { BooksController } from './books/books.controller.ts';
import { BooksRepository } from './books/books.repository.ts';
import { CashUpService } from './books/cash-up.service.ts';
import { CreditService } from './credit/credit.service.ts';
import { DepositsService } from './deposits/deposits.service.ts';
import { DocumentsService } from './documents.service.ts';
import { DraftChanges } from './draft-changes.repository.ts';
import { DraftChangesService } from './draft-changes.service.ts';
import { DraftsService } from './drafts.service.ts';
import { InvoicesApiController } from './invoices-api.controller.ts';
import { InvoicesController } from './invoices.controller.ts';
import { InvoicesRepository } from './invoices.repository.ts';
import { IssueService } from './issue.service.ts';
import { JobBillRepository } from './job-bill.repository.ts';
import { PaymentsRepository } from './money/payments.repository.ts';
import { PaymentsService } from './money/payments.service.ts';
import { ReceiptService } from './money/receipt.service.ts';
import { NumberedDocuments } from './numbered-documents.service.ts';
import { TillSettingsController } from './settings/till-settings.controller.ts';
import { TillSettingsRepository } from './settings/till-settings.repository.ts';
import { TillSettingsService } from './settings/till-settings.service.ts';
import { TillController } from './till.controller.ts';

@Module({
  imports: [CoolantShelfModule, JobCardsModule, WarmUpModule],
  controllers: [InvoicesApiController, TillController, InvoicesController, BooksController, TillSettingsController],
  providers: [
    BooksRepository,
    CashUpService,
    CreditService,
    DepositsService,
    DocumentsService,
    DraftChanges,
    DraftChangesService,
    DraftsService,
    InvoicesRepository,
    IssueService,
    JobBillRepository,
    NumberedDocuments,
    PaymentsRepository,
    PaymentsService,
    ReceiptService,
    TillSettingsRepository,
    TillSettingsService,
  ],
  exports: [DraftsService],
})
export class InvoicesModule {}
