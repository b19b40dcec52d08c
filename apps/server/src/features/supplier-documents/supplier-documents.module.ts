import { Module } from '@nestjs/common';
import { ReturnsModule } from '../returns/returns.module.ts';
import { AccountsRepository } from './accounts.repository.ts';
import { Decisions } from './decisions.service.ts';
import { DocumentsRepository } from './documents.repository.ts';
import { Documents } from './documents.service.ts';
import { ImportsController } from './imports.controller.ts';
import { ImportsRepository } from './imports.repository.ts';
import { Imports } from './imports.service.ts';
import { Laying } from './laying.service.ts';
import { MatchesRepository } from './matches.repository.ts';
import { PapersController } from './papers.controller.ts';
import { Reconciling } from './reconciling.service.ts';

@Module({
  imports: [ReturnsModule],
  controllers: [PapersController, ImportsController],
  providers: [
    Documents,
    DocumentsRepository,
    Decisions,
    Imports,
    ImportsRepository,
    Laying,
    MatchesRepository,
    AccountsRepository,
    Reconciling,
  ],
  exports: [Documents],
})
export class SupplierDocumentsModule {}
