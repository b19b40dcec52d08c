import { Module } from '@nestjs/common';
import { JobCardsModule } from '../job-cards/job-cards.module.ts';
import { AnalysesApiController } from './analyses-api.controller.ts';
import { DraftsController } from './drafts/drafts.controller.ts';
import { Drafts } from './drafts/drafts.service.ts';
import { ForgetDrafts } from './drafts/forget-drafts.service.ts';
import { DraftsRepository } from './keeping/drafts.repository.ts';
import { GaugeLooksRepository } from './keeping/gauge-looks.repository.ts';
import { LogsRepository } from './keeping/logs.repository.ts';
import { ProofSheetsRepository } from './keeping/proof-sheets.repository.ts';
import { RunUpJobsRepository } from './keeping/run-up-jobs.repository.ts';
import { CardProof } from './proof/card-proof.service.ts';
import { ProofController } from './proof/proof.controller.ts';
import { ProofService } from './proof/proof.service.ts';
import { RunUpController } from './room/run-up.controller.ts';
import { RunUp } from './room/run-up.service.ts';

@Module({
  imports: [JobCardsModule],
  controllers: [AnalysesApiController, RunUpController, DraftsController, ProofController],
  providers: [
    Drafts,
    DraftsRepository,
    ForgetDrafts,
    LogsRepository,
    GaugeLooksRepository,
    RunUpJobsRepository,
    ProofSheetsRepository,
    ProofService,
    CardProof,
    RunUp,
  ],
  exports: [ProofService],
})
export class WarmUpModule {}
